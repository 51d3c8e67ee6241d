import { readLesson } from '@barwise/parser'
import { openFonts, type PageItem, renderHtml, renderPdf } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { stripBars } from '../../../src/page/document/strip-bars.ts'
import { toldCards } from '../../../src/page/document/told-cards.ts'
import { pageWords } from '../../../src/page/document/words-of-language.ts'
import { stepsOfPart } from '../../../src/steps/part-steps.ts'
import { lessonText } from '../../../src/surfaces/text.ts'

const TEXT = `---
title: Gangway
tempo: 60
---

:::part{#p title="Plank" grid=8 show=none}
pickup
  4: . 3@2
bar 1
  1: 3@1 x@1
  2: 3@1 -
  3: - 3@1
  4: 3@1 x@1
bar 2
  1: 5@1 -
  2: - -
  3: - -
  4: - -
bar 3-4 = bar 1-2
bar 5
  1: x@1 7@1
  2: - -
  3: - -
  4: - -
bar 6
  1: - -
  2: - -
  3: - -
  4: - -
:::

PLACED
`

function read(placed: string): ReturnType<typeof readLesson>['lesson'] {
  return readLesson({ path: 'gangway.md', text: TEXT.replace('PLACED', placed) }).lesson
}

const lesson = read('')
const part = lesson.parts[0]!
const steps = stepsOfPart(lesson, part)
const told = (bars: { from: number; to: number } | null): ReturnType<typeof toldCards> =>
  toldCards({ part, bars }, steps, { lesson, words: pageWords('en') })

describe('the cards of some bars', () => {
  test('are those of their own; a pickup goes with bar 1', () => {
    expect(told(null).cards.map(({ bar }) => bar)).toEqual([0, 1, 2, 5, 6])
    expect(told({ from: 1, to: 1 }).cards.map(({ bar }) => bar)).toEqual([0, 1])
    expect(told({ from: 2, to: 4 }).cards.map(({ bar }) => bar)).toEqual([2])
  })

  test('say no rhythm where nothing begins', () => {
    const rhythms = new Map(told(null).cards.map(({ bar, rhythm }) => [bar, rhythm]))
    expect(rhythms.get(2)).not.toBe('')
    expect(rhythms.get(6)).toBe('')
  })
})

describe('the strips of a part', () => {
  const shown = (bars: { from: number; to: number } | null): readonly (readonly number[])[] =>
    stripBars(part, bars).map(({ stands }) => stands)

  test('are one for each bar that differs, where no bars are asked for', () => {
    expect(shown(null)).toEqual([[0], [1, 3], [2, 4], [5], [6]])
  })

  test('are those that are asked for', () => {
    expect(shown({ from: 3, to: 4 })).toEqual([[3], [4]])
    expect(shown({ from: 1, to: 2 })).toEqual([[0], [1], [2]])
  })
})

describe('what is placed of a part', () => {
  const fonts = openFonts(fontBytes())

  /** The names of bars that stand on each surface. */
  async function namesIn(placed: string, names: RegExp): Promise<readonly (readonly string[])[]> {
    const { blocks } = read(placed)
    const own = { ...lesson, blocks }
    const { pages } = await renderPdf({ lessons: [{ lesson: own }], fonts, creationDate: new Date(0) })
    const lines = pages.flatMap((page) =>
      page.items.filter((item): item is Extract<PageItem, { kind: 'line' }> => item.kind === 'line'),
    )
    const html = renderHtml({ book: null, lessons: [{ lesson: own, images: new Map() }], fonts, webFonts: [] })
    const page = String(html.get('index.html')).replace(/<svg.*?<\/svg>|<nav.*?<\/nav>/g, '')
    const found = (text: string): readonly string[] => text.match(names) ?? []
    return [
      lines.flatMap((line) =>
        found(
          line.fragments
            .map((fragment) => fragment.text)
            .join('')
            .replaceAll('\u00a0', ' '),
        ),
      ),
      found(page.replace(/<[^>]*>/g, '\n')),
      found(lessonText(own)),
    ]
  }

  test('has the same strips on paper, in the booklet and in text, and calls the pickup by its name', async () => {
    for (const [placed, names] of [
      ['::strip{part=p}', ['Pickup', 'Bars 1 and 3', 'Bars 2 and 4', 'Bar 5', 'Bar 6']],
      ['::strip{part=p bars=1-2}', ['Pickup', 'Bar 1', 'Bar 2']],
    ] as const) {
      for (const found of await namesIn(placed, /^(?:Pickup|Bars? \d[\d, and]*)(?=\.|$)/gm))
        expect(found).toEqual(names)
    }
  })

  test('has the same cards on paper, in the booklet and in text', async () => {
    for (const found of await namesIn('::cards{part=p bars=1-2}', /^(?:Pickup|Bars? \d)(?=[.,]|$)/gm))
      expect(found).toEqual(['Pickup', 'Bar 1', 'Bar 2'])
  })

  test('says the same rhythms to say on paper, in the booklet and in text', async () => {
    for (const found of await namesIn('::cards{part=p bars=6-6}', /Say:/g)) expect(found).toEqual([])
    for (const found of await namesIn('::cards{part=p bars=2-2}', /Say:/g)) expect(found.length).toBeGreaterThan(0)
  })
})
