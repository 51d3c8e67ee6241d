import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { PUPIL } from '@barwise/render'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hasBrowser, openBrowser } from '../support/browser.ts'
import { axeFaults } from './axe-faults.ts'
import { hardBooklet, onDisk } from './example-booklet.ts'

/** From the narrowest phone, by a page at twice its size on a desk (640), to a projector. */
const WIDTHS = [320, 390, 640, 820, 1280, 1920]

describe.skipIf(!hasBrowser())('a page of what is hard to fit', () => {
  let browser: Browser

  beforeAll(async () => {
    browser = await openBrowser()
  })
  afterAll(async () => {
    await browser.close()
  })

  async function open(edition: typeof PUPIL, width: number, opened = browser): Promise<Page> {
    const folder = onDisk(hardBooklet(edition))
    const page = await opened.newPage({ viewport: { width, height: 900 } })
    await page.goto(pathToFileURL(join(folder, 'index.html')).href)
    await page.evaluate(() => document.fonts.ready)
    return page
  }

  describe.each([
    ['usual', PUPIL],
    ['large', { ...PUPIL, large: true }],
  ] as const)('%s', (_, edition) => {
    test('stays inside every window: no sideways scrolling, no word and no figure cut off', async () => {
      const page = await open(edition, 1280)
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 900 })
        const { scroll, outside } = await page.evaluate(whatIsOutside)
        expect(scroll, `${width}`).toBeLessThanOrEqual(width)
        expect(outside, `${width}`).toEqual([])
      }
      await page.close()
    })

    test('has no fault that axe-core finds', { timeout: 60_000 }, async () => {
      const page = await open(edition, 390)
      expect(await axeFaults(page)).toEqual([])
      await page.close()
    })
  })

  test('stays inside every window when the reader has set text to twice its size', async () => {
    // The usual size is 16 pixels; WCAG 2.2, success criterion 1.4.4 asks for twice that.
    const enlarged = await openBrowser(['--blink-settings=defaultFontSize=32'])
    const page = await open(PUPIL, 1280, enlarged)
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('32px')
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 })
      const { scroll, outside } = await page.evaluate(whatIsOutside)
      expect(scroll, `${width}`).toBeLessThanOrEqual(width)
      expect(outside, `${width}`).toEqual([])
    }
    await enlarged.close()
  })

  test('large: no word is set smaller than 18 points, chord symbols and code aside', async () => {
    const page = await open({ ...PUPIL, large: true }, 1280)
    const sizes = await page.evaluate(() => {
      const words = [...document.querySelectorAll('main *, nav *')].filter(
        (node) =>
          node.closest('svg, sup, code, .spoken') === null &&
          [...node.childNodes].some((child) => child.nodeType === 3 && (child.textContent ?? '').trim() !== ''),
      )
      return words.map((node) => Number.parseFloat(getComputedStyle(node).fontSize))
    })
    // 18 points are 24 pixels of a style sheet (CSS Values 4, "absolute lengths"); counts in a sentence are set a little smaller than its words.
    expect(Math.min(...sizes)).toBeGreaterThan(23)
    await page.close()
  })

  test('large: no sign in music is set smaller than 14 points on a desk', async () => {
    const page = await open({ ...PUPIL, large: true }, 1280)
    const least = await page.evaluate(() => {
      const texts = [...document.querySelectorAll<SVGTextElement>('.systems text, .card text')]
      return Math.min(
        ...texts
          .filter((text) => text.getClientRects().length > 0)
          .map((text) => Number(text.getAttribute('font-size')) * (text.getScreenCTM()?.a ?? 0)),
      )
    })
    expect((least * 72) / 96).toBeGreaterThan(13.9)
    await page.close()
  })
})

/** What lies outside the window or, in a drawing, outside its own box to the left or right. Runs in the page. */
function whatIsOutside(): { readonly scroll: number; readonly outside: readonly string[] } {
  const outside: string[] = []
  const name = (node: Element): string =>
    `${node.tagName} ${node.getAttribute('class') ?? ''} ${node.textContent?.slice(0, 40)}`
  for (const node of document.querySelectorAll('main *, nav *')) {
    const box = node.getBoundingClientRect()
    // What scrolls in its own frame, or is only spoken, may be wider.
    if (box.width === 0 || node.closest('.spoken, .table, pre') !== null) continue
    if (box.left < -1 || box.right > innerWidth + 1) outside.push(name(node))
  }
  for (const drawing of document.querySelectorAll('main svg')) {
    const frame = drawing.getBoundingClientRect()
    if (frame.width === 0) continue
    for (const node of drawing.querySelectorAll('text, path, use')) {
      const box = node.getBoundingClientRect()
      if (box.left < frame.left - 2 || box.right > frame.right + 2) outside.push(name(node))
    }
  }
  return { scroll: document.documentElement.scrollWidth, outside }
}
