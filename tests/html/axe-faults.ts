import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

/** What axe-core objects to in an open page, with the first element of each kind. */
export async function axeFaults(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: AXE })
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(): Promise<AxeReport> } }
    const { violations } = await axe.run()
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160) ?? ''}`)
  })
}

interface AxeReport {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[]
}
