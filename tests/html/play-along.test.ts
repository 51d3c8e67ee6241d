import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'
import { readPlayerScript } from '@barwise/cli'
import { PUPIL } from '@barwise/render'
import { HtmlValidate } from 'html-validate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hasBrowser, openBrowser } from '../support/browser.ts'
import { axeFaults } from './axe-faults.ts'
import { exampleBooklet, lessonBooklet, onDisk, pagesOf } from './example-booklet.ts'

const player = await readPlayerScript(['source'])
const booklet = exampleBooklet(PUPIL, player)
const DESK = { width: 1314, height: 924 }
const PHONE = { width: 390, height: 844 }
/** How far time goes on between two looks: as far as the page looks at its clock. */
const TICK_MS = 25

describe('the booklet with its play-along, as files', () => {
  test('is the booklet to read, but for two scripts at the end of each page that has a part', () => {
    const plain = exampleBooklet()
    expect([...booklet.keys()].filter((name) => !plain.has(name))).toEqual(['assets/player.js'])
    for (const name of pagesOf(booklet)) {
      const page = String(booklet.get(name))
      const scripts = page.match(/<script.*?<\/script>/gs) ?? []
      expect(scripts.length, name).toBe(name === 'index.html' ? 0 : 2)
      expect(page.replace(scripts.join(''), ''), name).toBe(plain.get(name))
    }
  })

  test('is valid HTML', async () => {
    const validate = new HtmlValidate({ root: true, extends: ['html-validate:standard', 'html-validate:a11y'] })
    const report = await validate.validateString(String(booklet.get('lantern-round.html')))
    expect(report.results.flatMap(({ messages }) => messages.map((m) => `${m.line}:${m.column} ${m.ruleId}`))).toEqual(
      [],
    )
  })

  test('has one small classic script that calls nothing from elsewhere, the same every time', async () => {
    expect(await readPlayerScript(['source'])).toBe(player)
    expect(player.length).toBeLessThan(20_000)
    expect(player).not.toMatch(/\b(?:import|export|fetch|XMLHttpRequest|eval)\b|https?:\/\/(?!www\.w3\.org\/2000\/svg)/)
  })

  test('makes a page no more than 3 % larger', () => {
    const plain = exampleBooklet()
    for (const name of pagesOf(booklet)) {
      const [played, read] = [booklet, plain].map((one) => Buffer.byteLength(String(one.get(name))))
      expect(played! / read!, name).toBeLessThan(1.03)
    }
  })
})

describe.skipIf(!hasBrowser())('the play-along, opened from disk', () => {
  const folder = onDisk(booklet)
  let browser: Browser

  beforeAll(async () => {
    browser = await openBrowser(['--autoplay-policy=no-user-gesture-required', '--mute-audio'])
  })
  afterAll(async () => {
    await browser.close()
  })

  /** A page whose time stands still: its timers and its audio clock go on only by `page.clock`, so that a busy machine changes nothing. */
  async function open(name: string, given: Parameters<Browser['newPage']>[0] = {}, from = folder): Promise<Page> {
    const page = await browser.newPage({ viewport: DESK, ...given })
    await page.clock.install({ time: 0 })
    await page.addInitScript(() => {
      const own = (name: string, get: () => number): void => {
        Object.defineProperty(AudioContext.prototype, name, { get })
      }
      own('currentTime', () => performance.now() / 1000)
      own('baseLatency', () => 0)
      own('outputLatency', () => 0)
    })
    await page.goto(pathToFileURL(join(from, name)).href)
    await page.evaluate(() => document.fonts.ready)
    if (given?.javaScriptEnabled !== false) await page.clock.pauseAt(60_000)
    return page
  }

  /** Notes every count that is shown from now on, with its time in milliseconds. */
  async function watchCounts(page: Page): Promise<() => Promise<readonly (readonly [count: string, at: number])[]>> {
    await page.evaluate(() => {
      const seen: [string, number][] = []
      Object.assign(window, { seen })
      const count = document.querySelector('.player .place b')
      if (count === null) return
      new MutationObserver((records) => {
        for (const record of records)
          for (const node of record.addedNodes) seen.push([node.textContent ?? '', performance.now()])
      }).observe(count, { childList: true })
    })
    return () => page.evaluate(() => (window as unknown as { seen: [string, number][] }).seen)
  }

  /** As fast as it goes, without the beats before, and the focus where Space starts. */
  async function quicken(page: Page): Promise<void> {
    await page.getByRole('slider', { name: 'Tempo' }).fill('120')
    await page.getByRole('checkbox', { name: 'Count-in' }).uncheck()
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
  }

  /** Lets time go on until a place is shown, as in `Bar 1 2 &`; half a minute at most. */
  async function reach(page: Page, place: string | RegExp): Promise<void> {
    await pass(page, async () => {
      const shown = (await page.locator('.player .place').textContent()) ?? ''
      return typeof place === 'string' ? shown === place : place.test(shown)
    })
  }

  async function pass(page: Page, until: () => Promise<boolean>): Promise<void> {
    for (let ms = 0; ms < 30_000; ms += TICK_MS) {
      if (await until()) return
      await page.clock.runFor(TICK_MS)
    }
    throw new Error('it never came')
  }

  test('makes no sound by itself, asks for nothing outside its folder and prints no error', async () => {
    const page = await browser.newPage({ viewport: DESK })
    const problems: string[] = []
    page.on('request', (request) => {
      if (!request.url().startsWith(pathToFileURL(folder).href)) problems.push(request.url())
    })
    page.on('requestfailed', (request) => problems.push(`missing ${request.url()}`))
    page.on('console', (message) => problems.push(message.text()))
    page.on('pageerror', (error) => problems.push(error.message))
    await page.addInitScript(() => {
      const Real = AudioContext
      Object.assign(window, { opened: 0 })
      window.AudioContext = class extends Real {
        constructor(options?: AudioContextOptions) {
          super(options)
          Object.assign(window, { opened: (window as unknown as { opened: number }).opened + 1 })
        }
      }
    })
    await page.goto(pathToFileURL(join(folder, 'ferry-queue.html')).href)
    await page.waitForSelector('.player')
    const opened = (): Promise<number> => page.evaluate(() => (window as unknown as { opened: number }).opened)
    expect(await opened()).toBe(0)
    await page.keyboard.press('Space')
    // Here alone the page has its own clock.
    await page.waitForFunction(() => document.querySelector('.player .place')?.textContent !== '')
    expect(await opened()).toBe(1)
    await page.keyboard.press('Space')
    expect(problems).toEqual([])
    await page.close()
  })

  test('is not there without scripts', async () => {
    const page = await open('ferry-queue.html', { javaScriptEnabled: false })
    expect(await page.locator('.player, .loop-bar').count()).toBe(0)
    expect(await page.locator('.card').count()).toBeGreaterThan(3)
    await page.close()
  })

  test('lights staff, tab, count, strip, sentence and map at once, and only what sounds', async () => {
    for (const viewport of [DESK, PHONE]) {
      const page = await open('ferry-queue.html', { viewport })
      await quicken(page)
      await page.keyboard.press('Space')
      await reach(page, 'Bar 1 2 &')
      const lit = await page.evaluate(() => {
        const seen = [...document.querySelectorAll<HTMLElement>('.lit')].filter(
          (node) => node.getClientRects().length > 0,
        )
        const groups = seen.filter((node) => node.tagName === 'g')
        const text = (nodes: readonly Element[]): string => nodes.map((node) => node.textContent).join(' ')
        return {
          groups: [...new Set(groups.map(({ dataset }) => `${dataset.bar} ${dataset.at}`))],
          systems: text(groups.filter((node) => node.closest('.systems'))),
          cards: text(groups.filter((node) => node.closest('.card'))),
          said: text(seen.filter((node) => node.matches('.steps span'))),
          map: text(seen.filter((node) => node.matches('.map a'))),
          frames: [...document.querySelectorAll('.frame')].map((node) =>
            node.closest('svg')?.getAttribute('aria-label'),
          ),
          now: document.querySelector('.player .now')?.textContent,
        }
      })
      expect(lit.groups).toEqual(['1 5040'])
      // The shape on five strings in the tab, then the count: what is held goes on being lit.
      expect(lit.systems).toBe('1211121212&(3)')
      expect(lit.cards).toContain('1211121212')
      expect(lit.cards).toContain('&(a)')
      expect(lit.said).toMatch(/^A9 comes early/)
      expect(lit.now).toBe(lit.said)
      expect(lit.map).toBe(viewport === DESK ? '1' : '')
      expect(lit.frames.length).toBe(viewport === DESK ? 2 : 3)
      await page.keyboard.press('Space')
      expect(await page.locator('.lit, .frame').count()).toBe(0)
      await page.close()
    }
  })

  test('lights what is as in another bar in the card of that one', async () => {
    const page = await open('ferry-queue.html')
    await quicken(page)
    await page.locator('.card .loop-bar').nth(1).click()
    await reach(page, 'Bar 2 1 a')
    const said = await page.evaluate(() => {
      const clause = document.querySelector('.steps .lit')
      return [clause?.closest<HTMLElement>('[data-card]')?.dataset.card, clause?.textContent]
    })
    expect(said).toEqual(['1', 'Press again: Em7 up on a.'])
    await reach(page, 'Bar 2 3 e')
    expect(await page.evaluate(() => document.querySelector<HTMLElement>('.card:has(.lit)')?.dataset.card)).toBe('2')
    await page.close()
  })

  // 92 quarters a minute: the four beats before the music take 4 x 652.2 ms, the three missing of the pickup 3 x 652.2 ms, a sixteenth 163.0 ms.
  test('counts in and keeps its time: every event in order, at its moment', async () => {
    const page = await open('ferry-queue.html')
    const counts = await watchCounts(page)
    await page.keyboard.press('Space')
    await reach(page, 'Bar 2 1')
    const seen = await counts()
    const names = seen.map(([count]) => count)
    expect(names.slice(0, 7)).toEqual(['1', '2', '3', '4', '1', '2', '3'])
    expect(names.slice(7, 14)).toEqual(['4', '4 &', '4 a', '1', '1 e', '1 &', '1 a'])
    const at = (index: number): number => (seen[index]?.[1] ?? 0) - (seen[0]?.[1] ?? 0)
    const expected = (beats: number): number => (beats * 60_000) / 92
    expect(Math.abs(at(4) - expected(4))).toBeLessThanOrEqual(TICK_MS)
    expect(Math.abs(at(10) - expected(8))).toBeLessThanOrEqual(TICK_MS)
    expect(Math.abs(at(seen.length - 1) - expected(12))).toBeLessThanOrEqual(TICK_MS)
    await page.close()
  })

  test('plays slower and faster, and says so', async () => {
    const page = await open('ferry-queue.html')
    const tempo = page.getByRole('slider', { name: 'Tempo' })
    await tempo.focus()
    await page.keyboard.press('End')
    expect(await tempo.getAttribute('aria-valuetext')).toBe('110 beats a minute, 120 percent')
    expect(await page.locator('.player .shown').textContent()).toBe('110 bpm · 120\u00a0%')
    await page.keyboard.press('Home')
    expect(await tempo.getAttribute('aria-valuetext')).toBe('37 beats a minute, 40 percent')
    await quicken(page)
    const counts = await watchCounts(page)
    await page.getByRole('button', { name: 'Play' }).click()
    await reach(page, 'Bar 2 1')
    const seen = await counts()
    const first = seen.findIndex(([count]) => count === '1')
    const took = (seen.at(-1)?.[1] ?? 0) - (seen[first]?.[1] ?? 0)
    expect(Math.abs(took - (4 * 60_000) / 92 / 1.2)).toBeLessThanOrEqual(TICK_MS)
    await page.close()
  })

  test('goes round in the bars that are chosen, and from a line of the practice plan', async () => {
    const page = await open('ferry-queue.html')
    await quicken(page)
    await page.getByRole('combobox', { name: 'from bar' }).selectOption('4')
    await page.getByRole('combobox', { name: 'to bar' }).selectOption('4')
    expect(await page.getByRole('checkbox', { name: 'Loop' }).isChecked()).toBe(true)
    const counts = await watchCounts(page)
    await page.getByRole('button', { name: 'Play' }).click()
    expect(await page.getByRole('status').textContent()).toBe('Looping Groove, bars 4 to 4, at 110 beats a minute.')
    await reach(page, 'Bar 4 4 &')
    await reach(page, 'Bar 4 1')
    await reach(page, 'Bar 4 2')
    const names = (await counts()).map(([count]) => count)
    const turn = names.indexOf('1', 1)
    expect(names.slice(turn)).toEqual(names.slice(0, names.length - turn))
    await page.getByRole('button', { name: 'Stop' }).click()
    expect(await page.getByRole('status').textContent()).toBe('Stopped.')

    const line = page.locator('.loops .loop-bar').first()
    const bar = /\d+/.exec((await line.textContent()) ?? '')?.[0] ?? ''
    await line.click()
    await reach(page, new RegExp(`^Bar ${bar} `))
    await page.close()
  })

  // Four quarters at 240 a minute are a second.
  test('stops by itself at the end of a part that is not looped', async () => {
    const text =
      '---\ntitle: Tag\ntempo: 240\n---\n\n:::part{#t title="T" grid=4}\nbar 1\n  1: 0@6\n  2: 0@5\n  3: 0@4\n  4: 0@3\n:::\n'
    const short = onDisk(lessonBooklet(text, PUPIL, player))
    const page = await open('index.html', {}, short)
    await quicken(page)
    const counts = await watchCounts(page)
    await page.keyboard.press('Space')
    await pass(page, async () => (await page.getByRole('status').textContent()) === 'Stopped.')
    expect((await counts()).map(([count]) => count)).toEqual(['1', '2', '3', '4'])
    expect(await page.locator('.player button.play').textContent()).toBe('Play')
    expect(await page.locator('.lit, .frame').count()).toBe(0)
    await page.close()
  })

  test('plays the part that is chosen where a lesson has two', async () => {
    const page = await open('lantern-round.html')
    const part = page.getByRole('combobox', { name: 'Part' })
    expect(await part.locator('option').allTextContents()).toEqual(['Verse', 'Chorus'])
    await part.selectOption('Chorus')
    await quicken(page)
    await page.getByRole('button', { name: 'Play' }).click()
    await pass(page, async () => (await page.locator('g.lit').count()) > 0)
    const parts = await page.evaluate(() =>
      [...document.querySelectorAll('g.lit')].map((node) => node.closest<HTMLElement>('[data-part]')?.dataset.part),
    )
    expect(new Set(parts)).toEqual(new Set(['chorus']))
    await page.close()
  })

  test('works from the keyboard: sane order, focus seen, Space left to the control that has it', async () => {
    const page = await open('ferry-queue.html')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the play-along')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    const seen: string[] = []
    for (let press = 0; press < 8; press += 1) {
      const { name, outline } = await page.evaluate(() => {
        const node = document.activeElement as HTMLElement
        const label = (node as HTMLInputElement).labels?.[0]
        const words = [...(label?.childNodes ?? [])].filter((child) => child.nodeType === Node.TEXT_NODE)
        const text = words
          .map((child) => child.textContent)
          .join('')
          .trim()
        return {
          name: text === '' ? (node.textContent ?? '').trim() : text,
          outline: getComputedStyle(node).outlineWidth,
        }
      })
      expect(outline, name).toBe('3px')
      seen.push(name)
      await page.keyboard.press('Tab')
    }
    expect(seen).toEqual(['Play', 'Tempo', 'Click', 'Count-in', 'Scroll along', 'Loop', 'from bar', 'to bar'])
    await page.getByRole('checkbox', { name: 'Click' }).focus()
    await page.keyboard.press('Space')
    expect(await page.getByRole('checkbox', { name: 'Click' }).isChecked()).toBe(false)
    expect(await page.getByRole('button', { name: 'Play' }).count()).toBe(1)
    await page.getByRole('button', { name: 'Play' }).focus()
    await page.keyboard.press('Space')
    expect(await page.getByRole('button', { name: 'Stop' }).count()).toBe(1)
    await page.close()
  })

  test('scrolls along only where motion is welcome', async () => {
    const along = async (page: Page): Promise<boolean> => {
      const checked = await page.getByRole('checkbox', { name: 'Scroll along' }).isChecked()
      await page.evaluate(() => scrollTo(0, 0))
      await quicken(page)
      await page.keyboard.press('Space')
      await reach(page, 'Bar 1 2')
      const scrolled = (): Promise<boolean> => page.evaluate(() => scrollY > 0)
      // Scrolling takes its own time.
      for (let look = 0; look < (checked ? 100 : 10) && !(await scrolled()); look += 1) await setTimeout(50)
      const moved = await scrolled()
      expect(moved).toBe(checked)
      await page.close()
      return moved
    }
    expect(await along(await open('ferry-queue.html', { viewport: PHONE }))).toBe(true)
    expect(await along(await open('ferry-queue.html', { viewport: PHONE, reducedMotion: 'reduce' }))).toBe(false)
  })

  test('has targets of 44 pixels on a phone, fits every window, and is not printed', async () => {
    const page = await open('lantern-round.html', { viewport: PHONE })
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          '.player button,.player select,.player label:has(input),.player input[type=range],.loop-bar',
        ),
      ]
        .map((node) => ({ name: node.textContent, height: node.getBoundingClientRect().height }))
        .filter(({ height }) => height < 44),
    )
    expect(small).toEqual([])
    for (const width of [320, 390, 721, 900, 1314]) {
      await page.setViewportSize({ width, height: 800 })
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `at ${width}`).toBeLessThanOrEqual(width)
      const bar = await page.locator('.player').boundingBox()
      expect(bar?.height, `at ${width}`).toBeLessThan(300)
    }
    await page.emulateMedia({ media: 'print' })
    expect(await page.locator('.player').isVisible()).toBe(false)
    expect(await page.locator('.loop-bar').first().isVisible()).toBe(false)
    await page.close()
  })

  test('has no fault that axe-core finds, while it plays, wide on white and narrow on black', {
    timeout: 120_000,
  }, async () => {
    for (const given of [{ viewport: DESK }, { viewport: PHONE, colorScheme: 'dark' }] as const) {
      const page = await open('ferry-queue.html', given)
      await quicken(page)
      await page.keyboard.press('Space')
      await reach(page, 'Bar 1 2 &')
      // It waits for timers of the page.
      await page.clock.resume()
      expect(await axeFaults(page)).toEqual([])
      await page.close()
    }
  })
})
