import { type Browser, chromium } from 'playwright-core'
import { hasTool } from './tools.ts'

const PROGRAM = '/usr/bin/chromium'

/** Whether the browser is installed; see `hasTool`. */
export function hasBrowser(): boolean {
  return hasTool(PROGRAM)
}

/** A browser without a window, with further flags of its command line. */
export function openBrowser(flags: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: PROGRAM, args: ['--no-sandbox', '--disable-gpu', ...flags] })
}
