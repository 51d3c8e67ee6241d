import type { Event } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { boundsOf } from '../../src/drawing/bounds.ts'
import type { DrawnItem, Role } from '../../src/drawing/drawing.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { pageWords } from '../../src/page/document/words-of-language.ts'
import { drawCardFigure } from '../../src/strip/card-figure.ts'
import { drawStrip } from '../../src/strip/draw-strip.ts'
import { drawLegend, signsInUse } from '../../src/strip/legend.ts'
import { stripStyle } from '../../src/strip/strip-style.ts'
import { ferryQueue } from '../engrave/ferry-queue.ts'
import { bar, lessonOf, rest, scratch, strike } from '../engrave/score-builder.ts'
import { zoo } from '../engrave/zoo.ts'

const { legend } = pageWords('en')
const fonts = openFonts(fontBytes())
const S = 840
const EM7 = { 5: 7, 4: 9, 3: 7, 2: 8, 1: 7 }

const flat = (items: readonly DrawnItem[]): readonly Exclude<DrawnItem, { kind: 'group' }>[] =>
  items.flatMap((item) => (item.kind === 'group' ? flat(item.items) : [item]))
const of = (items: readonly DrawnItem[], role: Role) => flat(items).filter((item) => item.role === role)
const box = (item: DrawnItem) => boundsOf([item], fonts)!
const texts = (items: readonly DrawnItem[], role: Role) =>
  of(items, role).map((item) => (item.kind === 'glyphs' ? item.text : ''))
const strip = (events: Event[], options: Parameters<typeof bar>[1] = {}) => {
  const { part } = lessonOf([bar(events, options)])
  return drawStrip({ part, bar: part.bars[0]!, fonts })
}

describe('a strip', () => {
  test('has one cell of 5 mm for each sixteenth and sets the beats apart', () => {
    const { columns } = strip([rest(16 * S)])
    const cell = (5 * 72) / 25.4
    expect(columns).toHaveLength(16)
    expect(columns[1]!.x - columns[0]!.x).toBeCloseTo(cell, 6)
    expect(columns[4]!.x - columns[3]!.x).toBeCloseTo(cell + (1.4 * 72) / 25.4, 6)
  })

  test('gives the parts of a triplet the width of their time', () => {
    const { columns } = strip([rest(16 * S)], { groups: [{ at: 0, length: 3360, parts: 3 }] })
    expect(columns[0]!.cell).toBeCloseTo(((4 / 3) * 5 * 72) / 25.4, 6)
  })

  test('prints the count, in brackets where nothing new sounds', () => {
    const { drawing } = strip([strike(2 * S, EM7), scratch(S, [3]), strike(S, EM7), rest(12 * S)])
    expect(texts(drawing.items, 'count').slice(0, 5)).toEqual(['1', '(e)', '&', 'a', '(2)'])
  })

  test('draws a ringing chord as one band on to its last slot', () => {
    const { drawing, columns } = strip([strike(6 * S, EM7), rest(10 * S)])
    const blocks = of(drawing.items, 'strip-block').map(box)
    const band = blocks.find(({ bottom, top }) => bottom - top < stripStyle().blockHeight / 2)!
    expect(band.right).toBeGreaterThan(columns[5]!.x)
    expect(band.right).toBeLessThan(columns[6]!.x)
    expect(band.bottom).toBeCloseTo(blocks[0]!.bottom, 6)
  })

  test('draws a short stroke half as wide and a soft one lower', () => {
    const { drawing } = strip([
      { ...strike(S, EM7, { marks: ['short'] }), target: { shape: 'Em7', shift: 0, only: null, added: [] } } as Event,
      strike(S, EM7),
      strike(S, EM7, { marks: ['ghost'] }),
      rest(13 * S),
    ])
    const [short, full, soft] = of(drawing.items, 'strip-block').map(box)
    expect(short!.right - short!.left).toBeCloseTo((full!.right - full!.left) / 2, 6)
    expect(soft!.bottom - soft!.top).toBeLessThan(0.7 * (full!.bottom - full!.top))
  })

  test('frames silence and leaves it empty', () => {
    const { drawing } = strip([rest(16 * S)])
    expect(of(drawing.items, 'strip-frame')).toHaveLength(16)
    expect(of(drawing.items, 'strip-block')).toHaveLength(0)
  })

  test('shows all sixteen swings of the hand', () => {
    const { drawing } = strip([strike(16 * S, EM7)])
    const ups = of(drawing.items, 'stroke-sign').filter((item) => item.kind === 'path' && item.data.length === 9)
    expect(ups).toHaveLength(8)
  })

  test('has no row of swings when the part is plucked', () => {
    const plucked = { ...bar([strike(16 * S, EM7, { stroke: 'pluck' })]), stroke: 'pluck' as const }
    const { part } = lessonOf([plucked])
    expect(of(drawStrip({ part, bar: part.bars[0]!, fonts }).drawing.items, 'stroke-sign')).toHaveLength(0)
  })

  test('marks an accent over its block', () => {
    const { drawing } = strip([strike(S, EM7, { marks: ['accent'] }), rest(15 * S)])
    const [accent] = of(drawing.items, 'articulation').map(box)
    const [block] = of(drawing.items, 'strip-block').map(box)
    expect(accent!.bottom).toBeLessThan(block!.top)
    expect((accent!.left + accent!.right) / 2).toBeCloseTo((block!.left + block!.right) / 2, 6)
  })

  test('marks palm muting once for a run', () => {
    const muted = strike(S, EM7, { palmMuted: true })
    const { drawing } = strip([muted, muted, strike(S, EM7), muted, rest(12 * S)])
    expect(texts(drawing.items, 'palm-mute').filter((text) => text !== '')).toEqual(['P.M.', 'P.M.'])
  })

  test('keeps each event together, held-in ones at a negative tick', () => {
    const { part } = lessonOf([bar([rest(14 * S), strike(4 * S, EM7)]), bar([rest(14 * S)], { lead: 2 * S })])
    const { drawing } = drawStrip({ part, bar: part.bars[1]!, fonts })
    const groups = drawing.items.flatMap((item) => (item.kind === 'group' ? [item.at] : []))
    expect(groups).toEqual([-2 * S, 2 * S])
  })

  test('is the same twice', () => {
    const events = [strike(4 * S, EM7), rest(12 * S)]
    expect(strip(events).drawing).toEqual(strip(events).drawing)
  })
})

describe('words in blocks', () => {
  test('stay inside them', () => {
    const { lesson, part } = ferryQueue()
    for (const minTextPt of [0, 14]) {
      for (const { number, length } of part.bars) {
        const { drawing } = drawCardFigure({
          lesson,
          part,
          fonts,
          bar: number,
          fromTicks: 0,
          toTicks: length,
          minTextPt,
        })
        const blocks = of(drawing.items, 'strip-block').map(box)
        for (const word of of(drawing.items, 'strip-word').map(box)) {
          const inside = blocks.some(
            (block) => block.left <= word.left && block.right >= word.right && block.top <= word.top,
          )
          expect(inside, `bar ${number}`).toBe(true)
        }
      }
    }
  })
})

describe('a card figure', () => {
  test('stands note, count and block of a slot in one column', () => {
    const { lesson, part } = ferryQueue()
    const { drawing, excerpt } = drawCardFigure({ lesson, part, fonts, bar: 1, fromTicks: 0, toTicks: 16 * S })
    const counts = of(drawing.items, 'count').map(box)
    expect(counts).toHaveLength(16)
    counts.forEach((count, index) => {
      expect(Math.abs((count.left + count.right) / 2 - excerpt.slots[index]!.x)).toBeLessThan(0.5)
    })
  })

  test('keeps the strip clear of the tab', () => {
    for (const { name, lesson, part } of zoo()) {
      for (const { number, length } of part.bars) {
        const figure = drawCardFigure({ lesson, part, fonts, bar: number, fromTicks: 0, toTicks: length })
        const counts = of(figure.drawing.items, 'count').map(box)
        const above = of(figure.drawing.items, 'tab-line').map(box)
        const lowest = Math.max(...above.map(({ bottom }) => bottom))
        for (const count of counts) expect(count.top, `${name} ${number}`).toBeGreaterThan(lowest + 1)
      }
    }
  })

  test('grows its cells where accidentals need room, not beyond the width given', () => {
    const { lesson, part } = ferryQueue()
    const of = (maxWidthPt: number) =>
      drawCardFigure({ lesson, part, fonts, bar: 2, fromTicks: 8 * S, toTicks: 16 * S, maxWidthPt })
    const free = of(Infinity)
    expect(free.excerpt.slots[0]!.cell).toBeGreaterThan((5.2 * 72) / 25.4)
    expect(of(160).drawing.width).toBeLessThanOrEqual(160.01)
  })
})

describe('a figure too wide for its page', () => {
  const wide = lessonOf([bar([strike(20160, EM7)], { metre: { count: 12, unit: 8 }, beatTicks: 5040 })])
  const figure = (pageWidthPt: number) =>
    drawCardFigure({ ...wide, fonts, bar: 1, fromTicks: 0, toTicks: 20160, pageWidthPt })

  test('has narrower cells first', () => {
    const free = figure(Infinity)
    const tight = figure(free.drawing.width * 0.9)
    expect(tight.drawing.width).toBeLessThanOrEqual(free.drawing.width * 0.9 + 0.01)
    expect(tight.scale).toBe(1)
  })

  test('is set smaller as a whole when that does not do', () => {
    const tiny = figure(150)
    expect(tiny.drawing.width).toBeLessThanOrEqual(150.01)
    expect(tiny.scale).toBeLessThan(1)
  })
})

describe('the legend', () => {
  test('lists the signs in use, in its own order', () => {
    const { cells } = strip([scratch(S, [3]), strike(2 * S, EM7), rest(13 * S)])
    expect(signsInUse(cells)).toEqual(['struck', 'ring', 'scratch', 'silence', 'swing'])
  })

  test('prints each sign with its words within the width given', () => {
    const signs = ['struck', 'short', 'ring', 'unstruck', 'scratch', 'silence', 'swing'] as const
    const drawing = drawLegend({ signs, fonts, widthPt: 200, words: legend })
    const runs = flat(drawing.items)
    expect(texts(runs, 'text')).toEqual(signs.map((sign) => legend[sign]))
    expect(boundsOf(runs, fonts)!.right).toBeLessThanOrEqual(200)
  })
})
