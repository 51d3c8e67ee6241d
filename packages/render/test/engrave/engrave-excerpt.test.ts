import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { type EngravedExcerpt, engraveExcerpt } from '../../src/engrave/engrave-excerpt.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { collisions } from './collisions.ts'
import { drawnBoxes } from './drawn-boxes.ts'
import { ferryQueue } from './ferry-queue.ts'
import { bar, lessonOf, strike } from './score-builder.ts'

const fonts = openFonts(fontBytes())
const MM = 72 / 25.4
const SPACE = 1.5 * MM
const CELL = 5.4 * MM
const GAP = 1.4 * MM

function excerpt(number: number, fromTicks: number, toTicks: number, cellPt: number = CELL): EngravedExcerpt {
  return engraveExcerpt({
    ...ferryQueue(),
    fonts,
    bar: number,
    fromTicks,
    toTicks,
    staffSpacePt: SPACE,
    cellPt,
    beatGapPt: GAP,
  })
}

describe('the columns of an excerpt', () => {
  test('are one for each slot, equally wide, with a gap between beats', () => {
    const { slots } = excerpt(1, 0, 13440)
    expect(slots.map(({ at }) => at)).toEqual(Array.from({ length: 16 }, (_, i) => i * 840))
    slots.slice(1).forEach((slot, i) => {
      expect(slot.x - slots[i]!.x).toBeCloseTo(CELL + ((i + 1) % 4 === 0 ? GAP : 0), 6)
    })
  })

  test('hold head, figure and stroke in their middle', () => {
    const { slots, drawing } = excerpt(4, 0, 13440)
    for (const { role, left, right } of drawnBoxes(drawing.items, fonts)) {
      if (role !== 'tab-figure' && role !== 'tab-scratch' && role !== 'scratch-head') continue
      expect(Math.min(...slots.map(({ x }) => Math.abs(x - (left + right) / 2)))).toBeLessThan(0.1 * SPACE)
    }
  })

  test('stand in the same places when the excerpt starts later, counted from its right end', () => {
    const whole = excerpt(2, 0, 13440)
    const half = excerpt(2, 6720, 13440)
    const fromEnd = (e: EngravedExcerpt): readonly number[] => e.slots.map(({ x }) => (e.slots.at(-1)?.x ?? 0) - x)
    expect(fromEnd(half)).toEqual(
      fromEnd(whole)
        .slice(8)
        .map((x) => expect.closeTo(x, 6)),
    )
  })

  test('share the room of their beat where it is cut', () => {
    const note = (ticks: number) => strike(ticks, { 5: 3 })
    const built = lessonOf([
      bar([note(1120), note(1120), note(1120), note(3 * 3360)], { groups: [{ at: 0, length: 3360, parts: 3 }] }),
    ])
    const { slots } = engraveExcerpt({
      ...built,
      fonts,
      bar: 1,
      fromTicks: 0,
      toTicks: 6720,
      staffSpacePt: SPACE,
      cellPt: CELL,
      beatGapPt: GAP,
    })
    expect(slots.map(({ at }) => at)).toEqual([0, 1120, 2240, 3360, 4200, 5040, 5880])
    expect(slots[1]!.x - slots[0]!.x).toBeCloseTo((4 * CELL) / 3, 6)
  })
})

test('a chord held in is in brackets in both staves, with its accidentals, and printed in the tab', () => {
  const boxes = drawnBoxes(excerpt(2, 6720, 13440).drawing.items, fonts)
  expect(boxes.filter(({ role }) => role === 'bracket')).toHaveLength(4)
  expect(boxes.filter(({ role, at }) => role === 'accidental' && at === 5040)).toHaveLength(1)
  expect(boxes.filter(({ role, at }) => role === 'tab-figure' && at === 5040)).toHaveLength(5)
})

test('a cut inside the bar has no bar line, and half a tie for each note that sounds on', () => {
  const { drawing, slots } = excerpt(1, 0, 6720)
  const boxes = drawnBoxes(drawing.items, fonts)
  expect(boxes.filter(({ role }) => role === 'bar-line')).toEqual([])
  expect(boxes.filter(({ role, left }) => role === 'tie' && left > slots[6]!.x)).toHaveLength(5)
})

test.each([
  [0, 0, 3360],
  [1, 0, 13440],
  [2, 0, 13440],
  [2, 6720, 13440],
  [4, 0, 13440],
  [8, 6720, 13440],
])('nothing collides in bar %i from %i to %i at the least cell', (number, from, to) => {
  const { leastCellPt } = excerpt(number, from, to)
  const { drawing } = excerpt(number, from, to, Math.max(5 * MM, leastCellPt))
  expect(collisions(drawnBoxes(drawing.items, fonts), SPACE)).toEqual([])
})

test('a bar the part does not have is our bug', () => {
  expect(() => excerpt(99, 0, 3360)).toThrow('no bar 99')
})
