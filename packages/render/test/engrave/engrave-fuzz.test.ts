import type { Bar, Event, Key, Mark, Metre } from '@barwise/parser'
import { barTicks } from '@barwise/parser'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { collisionsIn, describeCollision } from '../../src/drawing/collisions.ts'
import { engravePart } from '../../src/engrave/engrave-part.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { collisions } from './collisions.ts'
import { drawnBoxes } from './drawn-boxes.ts'
import { bar, lessonOf, rest, scratch, strike } from './score-builder.ts'

const fonts = openFonts(fontBytes())
const MM = 72 / 25.4
const SPACE = 1.75 * MM

const METRES: readonly Metre[] = [
  { count: 4, unit: 4 },
  { count: 3, unit: 4 },
  { count: 2, unit: 4 },
  { count: 5, unit: 4 },
  { count: 6, unit: 8 },
  { count: 9, unit: 8 },
  { count: 12, unit: 8 },
]
const KEYS: readonly Key[] = [-6, -3, -1, 0, 1, 4, 6].map((fifths) => ({ tonic: 'C', mode: 'major', fifths }))
const MARKS: readonly (readonly Mark[])[] = [
  [],
  [],
  [],
  [],
  ['accent'],
  ['ghost'],
  ['short'],
  ['accent', 'short'],
  ['vibrato'],
  ['slide-off'],
]
const SYMBOLS = ['C', 'Am7', 'F#m7b5', 'Bbmaj7#11/D', 'G13']

const frets = fc
  .tuple(
    fc.integer({ min: 0, max: 18 }),
    fc.subarray([1, 2, 3, 4, 5, 6], { minLength: 1, maxLength: 6 }),
    fc.integer({ min: 0, max: 1000 }),
  )
  .map(([fret, strings, salt]) =>
    Object.fromEntries(
      strings.map((string) => [string, fret === 0 ? (salt * string) % 4 : fret + ((salt >> string) % 4)]),
    ),
  )

const strum = fc.record({
  frets,
  slots: fc.constantFrom(1, 1, 1, 2, 2, 3, 4, 6, 8),
  kind: fc.constantFrom('strike', 'strike', 'strike', 'scratch', 'rest', 'hammer', 'slide', 'into'),
  marks: fc.constantFrom(...MARKS),
  up: fc.boolean(),
  rolled: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
  muted: fc.integer({ min: 0, max: 5 }).map((n) => n === 0),
})

const bars = fc
  .record({
    metre: fc.constantFrom(...METRES),
    key: fc.constantFrom(...KEYS),
    strums: fc.array(strum, { minLength: 24, maxLength: 24 }),
    symbols: fc.array(fc.constantFrom(...SYMBOLS), { maxLength: 2 }),
    section: fc.option(fc.constantFrom('Verse', 'Chorus'), { nil: undefined, freq: 6 }),
    tempoBpm: fc.constantFrom(92, 92, 120),
  })
  .map(({ metre, key, strums, symbols, section, tempoBpm }): Bar => {
    const length = barTicks(metre)
    const events: Event[] = []
    let left = length / 840
    let before: Record<number, number> | null = null
    for (const raw of strums) {
      if (left === 0) break
      const slots = Math.min(raw.slots, left)
      const duration = slots * 840
      left -= slots
      const stroke = raw.up ? ('up' as const) : ('down' as const)
      if (raw.kind === 'rest') {
        events.push(rest(duration))
        before = null
      } else if (raw.kind === 'scratch') {
        events.push(
          scratch(duration, [5, 4, 3], {
            stroke,
            palmMuted: raw.muted,
            marks: raw.marks.filter((mark) => mark === 'accent' || mark === 'short' || mark === 'ghost'),
          }),
        )
        before = null
      } else if ((raw.kind === 'hammer' || raw.kind === 'slide') && before !== null) {
        const from: Record<number, number> = before
        const to = Object.fromEntries(Object.entries(from).map(([string, fret]) => [string, fret + 2]))
        const how = raw.kind === 'hammer' ? ('hammered' as const) : ('slid' as const)
        events.push(
          strike(duration, to, {
            stroke: null,
            technique: raw.kind,
            from: Object.fromEntries(Object.keys(to).map((string) => [string, how])),
            fromFret: from,
            flats: key.fifths < 0,
          }),
        )
        before = to
      } else {
        const into = raw.kind === 'into'
        events.push(
          strike(duration, raw.frets, {
            stroke,
            marks: [...raw.marks],
            rolled: raw.rolled,
            palmMuted: raw.muted,
            flats: key.fifths < 0,
            ...(into ? { technique: 'slide' as const } : {}),
          }),
        )
        before = raw.frets
      }
    }
    if (left > 0) events.push(rest(left * 840))
    const chords = symbols.map((symbol, i): [number, string] => [(i * length) / 2 - (((i * length) / 2) % 840), symbol])
    return bar(events, {
      metre,
      key,
      chords,
      tempoBpm,
      beatTicks: 13440 / metre.unit,
      ...(section === undefined ? {} : { section }),
    })
  })

test('whatever is played, nothing collides and lines are full', () => {
  fc.assert(
    fc.property(fc.array(bars, { minLength: 1, maxLength: 5 }), (list) => {
      const { systems } = engravePart({ ...lessonOf(list), fonts, widthPt: 174 * MM, staffSpacePt: SPACE })
      systems.forEach((system, i) => {
        expect(collisions(drawnBoxes(system.drawing.items, fonts), SPACE)).toEqual([])
        expect(collisionsIn(system.drawing.items, fonts).map(describeCollision)).toEqual([])
        if (i < systems.length - 1) expect(system.drawing.width).toBeLessThan(175.5 * MM)
      })
    }),
    { numRuns: 60, seed: 4 },
  )
})
