import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hasBrowser, openBrowser } from '../support/browser.ts'
import { axeFaults } from './axe-faults.ts'
import { exampleBooklet, onDisk, pagesOf } from './example-booklet.ts'

/** The pages that are also looked at narrow and dark: all lessons are written by the same code. */
const NARROW_PAGES = ['index.html', 'ferry-queue.html']
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

  const addressOf = (name: string): string => pathToFileURL(join(folder, name)).href

  async function open(name: string, width: number, scheme: 'light' | 'dark' = 'light'): Promise<Page> {
    const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme: scheme })
    await page.goto(addressOf(name))
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
    for (const name of pagesOf(booklet)) {
      await page.goto(addressOf(name))
      // A page left before its fonts are there breaks their loading off, which is no fault of the booklet.
      await page.evaluate(() => document.fonts.ready)
    }
    expect(problems).toEqual([])
    await page.close()
  })

  test('has no fault that axe-core finds, wide on white and narrow on black', { timeout: 240_000 }, async () => {
    const page = await open('index.html', WIDTHS.desktop)
    for (const name of pagesOf(booklet)) {
      await page.emulateMedia({ colorScheme: 'light' })
      await page.setViewportSize({ width: WIDTHS.desktop, height: 900 })
      await page.goto(addressOf(name))
      expect(await axeFaults(page), `${name}, wide on white`).toEqual([])
      if (!NARROW_PAGES.includes(name)) continue
      await page.emulateMedia({ colorScheme: 'dark' })
      await page.setViewportSize({ width: WIDTHS.phone, height: 900 })
      expect(await axeFaults(page), `${name}, narrow on black`).toEqual([])
    }
    await page.close()
  })

  test('never scrolls sideways, from a phone to a desk', { timeout: 120_000 }, async () => {
    const page = await open('index.html', WIDTHS.desktop)
    for (const name of pagesOf(booklet)) {
      await page.goto(addressOf(name))
      for (const width of [320, ...Object.values(WIDTHS)]) {
        await page.setViewportSize({ width, height: 900 })
        const content = await page.evaluate(() => document.documentElement.scrollWidth)
        expect(content, `${name} at ${width}`).toBeLessThanOrEqual(width)
      }
    }
    await page.close()
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

  test('lets the keyboard in: first the way past the links, then the links, each one seen where it is', async () => {
    const page = await open('ferry-queue.html', WIDTHS.desktop)
    const focused = (): Promise<{ readonly text: string; readonly outline: string; readonly inside: boolean }> =>
      page.evaluate(() => {
        const node = document.activeElement as HTMLElement
        const box = node.getBoundingClientRect()
        const inside = box.left >= 0 && box.top >= 0 && box.width > 0
        return { text: node.textContent ?? '', outline: getComputedStyle(node).outlineWidth, inside }
      })
    const seen: string[] = []
    for (let press = 0; press < 8; press += 1) {
      await page.keyboard.press('Tab')
      const { text, outline, inside } = await focused()
      seen.push(text)
      expect({ outline, inside }, text).toEqual({ outline: '3px', inside: true })
    }
    expect(seen.slice(0, 7)).toEqual([
      'Skip to the lesson',
      'Thursdays at Lamplight Yard',
      'Ferry Queue',
      'Shapes',
      'Groove',
      'Bar by bar',
      'Practice plan',
    ])
    await page.close()
  })

  test('is printed black on white, without links to click, its figures as large as on paper', async () => {
    const page = await open('ferry-queue.html', WIDTHS.desktop, 'dark')
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
    const printed = await page.evaluate(() => {
      const shown = (name: string): boolean => (document.querySelector(name)?.getClientRects().length ?? 0) > 0
      const { color, backgroundColor } = getComputedStyle(document.body)
      const figure = document.querySelector('.card .wide svg')
      const natural = Number.parseFloat(figure?.getAttribute('width') ?? '0')
      const widthPt = ((figure?.getBoundingClientRect().width ?? 0) * 72) / 96
      return { color, backgroundColor, rail: shown('.rail'), pager: shown('.pager'), scale: widthPt / natural }
    })
    expect(printed).toMatchObject({
      color: 'rgb(20, 24, 26)',
      backgroundColor: 'rgb(255, 255, 255)',
      rail: false,
      pager: false,
    })
    expect(printed.scale).toBeCloseTo(1, 2)
    await page.close()
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
