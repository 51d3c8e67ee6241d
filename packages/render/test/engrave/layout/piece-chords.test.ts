import { expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import type { DrawnItem } from '../../../src/drawing/drawing.ts'
import { engraveExcerpt } from '../../../src/engrave/engrave-excerpt.ts'
import { engravePart } from '../../../src/engrave/engrave-part.ts'
import { openFonts } from '../../../src/fonts/font-set.ts'
import { bar, lessonOf, rest, strike } from '../score-builder.ts'

const fonts = openFonts(fontBytes())
const C = { 5: 3, 4: 2 }
const Q = 3360
const bars = (symbols: readonly string[]) =>
  symbols.map((symbol) => bar([strike(2 * Q, C), strike(2 * Q, C)], { chords: [[0, symbol]] }))

function symbolsIn(items: readonly DrawnItem[]): readonly string[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return symbolsIn(item.items)
    return item.kind === 'glyphs' && item.role === 'chord-symbol' ? [item.text] : []
  })
}

test('a symbol written again in every bar is printed where it changes', () => {
  const { systems } = engravePart({ ...lessonOf(bars(['C', 'C', 'F', 'F'])), fonts, widthPt: 493, staffSpacePt: 4.5 })
  expect(systems.flatMap(({ drawing }) => symbolsIn(drawing.items))).toEqual(['C', 'F'])
})

test('what is in force is said again at the start of a line, over its first note', () => {
  const quiet = Array.from({ length: 12 }, (_, i) =>
    bar([rest(Q), strike(3 * Q, C)], i === 0 ? { chords: [[Q, 'C']] } : {}),
  )
  const { systems } = engravePart({ ...lessonOf(quiet), fonts, widthPt: 300, staffSpacePt: 4.5 })
  expect(systems.length).toBeGreaterThan(1)
  for (const { drawing } of systems) expect(symbolsIn(drawing.items)).toEqual(['C'])
})

test('an ending says its symbol again', () => {
  const endings = [
    { numbers: [1], from: 2, to: 2 },
    { numbers: [2], from: 3, to: 3 },
  ]
  const lesson = lessonOf(bars(['C', 'C', 'C']), { repeats: [{ from: 1, to: 2, times: 2, endings }] })
  const { systems } = engravePart({ ...lesson, fonts, widthPt: 493, staffSpacePt: 4.5 })
  expect(systems.flatMap(({ drawing }) => symbolsIn(drawing.items))).toEqual(['C', 'C', 'C'])
})

test('an excerpt from the middle of a bar says what is in force', () => {
  const lesson = lessonOf(bars(['C']))
  const excerpt = engraveExcerpt({
    ...lesson,
    fonts,
    bar: 1,
    fromTicks: 2 * Q,
    toTicks: 4 * Q,
    staffSpacePt: 4.25,
    cellPt: 14,
    beatGapPt: 4,
  })
  expect(symbolsIn(excerpt.drawing.items)).toEqual(['C'])
})
