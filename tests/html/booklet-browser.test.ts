import { createRequire } from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hasBrowser, openBrowser } from '../support/browser.ts'
import { exampleBooklet, onDisk, pagesOf } from './example-booklet.ts'

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')
const WIDTHS = { desktop: 1314, tablet: 900, phone: 390 } as const

describe.skipIf(!hasBrowser())('the booklet, opened from disk', () => {
  const booklet = exampleBooklet()
  const folder = onDisk(booklet)
  let browser: Browser

  beforeAll(async () => {
    browser = await openBrowser()
  })
  afterAll(async () => {
    await browser.close()
  })

  async function open(name: string, width: number, scheme: 'light' | 'dark' = 'light'): Promise<Page> {
    const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme: scheme })
    await page.goto(pathToFileURL(join(folder, name)).href)
    await page.evaluate(() => document.fonts.ready)
    return page
  }

  test('asks for nothing outside its folder, misses no file and prints no error', async () => {
    const page = await browser.newPage()
    const problems: string[] = []
    page.on('request', (request) => {
      if (!request.url().startsWith(pathToFileURL(folder).href)) problems.push(request.url())
    })
    page.on('requestfailed', (request) => problems.push(`missing ${request.url()}`))
    page.on('console', (message) => problems.push(message.text()))
    for (const name of pagesOf(booklet)) await page.goto(pathToFileURL(join(folder, name)).href)
    expect(problems).toEqual([])
    await page.close()
  })

  test('has no fault that axe-core finds, light and dark, wide and narrow', async () => {
    for (const name of pagesOf(booklet)) {
      for (const [width, scheme] of [
        [WIDTHS.desktop, 'light'],
        [WIDTHS.phone, 'dark'],
      ] as const) {
        const page = await open(name, width, scheme)
        await page.addScriptTag({ path: AXE })
        const found = await page.evaluate(async () => {
          const axe = (
            globalThis as unknown as {
              axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
            }
          ).axe
          const { violations } = await axe.run()
          return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160) ?? ''}`)
        })
        expect(found, `${name} ${scheme} ${width}`).toEqual([])
        await page.close()
      }
    }
  })

  test('never scrolls sideways, from a phone to a desk', async () => {
    for (const name of pagesOf(booklet)) {
      for (const width of [320, ...Object.values(WIDTHS)]) {
        const page = await open(name, width)
        expect(
          await page.evaluate(() => document.documentElement.scrollWidth),
          `${name} at ${width}`,
        ).toBeLessThanOrEqual(width)
        await page.close()
      }
    }
  })

  test('shows the wide figures on a desk and the narrow ones on a phone, never both', async () => {
    const shown = async (width: number): Promise<readonly number[]> => {
      const page = await open('ferry-queue.html', width)
      const counts = await page.evaluate(() =>
        ['.wide', '.narrow'].map(
          (name) => [...document.querySelectorAll(name)].filter((node) => node.getClientRects().length > 0).length,
        ),
      )
      await page.close()
      return counts
    }
    const [wide, none] = await shown(WIDTHS.desktop)
    expect(wide).toBeGreaterThan(3)
    expect(none).toBe(0)
    expect(await shown(WIDTHS.phone)).toEqual([0, wide])
  })

  test('sets its words in the faces it brings', async () => {
    const page = await open('ferry-queue.html', WIDTHS.desktop)
    const loaded = await page.evaluate(() =>
      [...document.fonts].filter((face) => face.status === 'loaded').map((face) => face.family),
    )
    expect(loaded.join()).toMatch(/Source Serif 4.*Source Sans 3|Source Sans 3.*Source Serif 4/)
    await page.close()
  })
})
