import { expect, it } from 'vitest'
import type { PlayBar } from '../../src/player/play-data.ts'
import { loopedBars, wholePart } from '../../src/player/stretch.ts'

/** Bars of a second each, in the order of playing. */
function barsOf(...numbers: readonly number[]): readonly PlayBar[] {
  return numbers.map((number, index): PlayBar => [number, 1000 * index, 1000, 250, 240, 4, 0])
}

function seconds({ fromMs, toMs }: { readonly fromMs: number; readonly toMs: number }): readonly number[] {
  return [fromMs / 1000, toMs / 1000]
}

it('plays the whole of a part once', () => {
  expect(wholePart(barsOf(0, 1, 2))).toEqual({ fromMs: 0, toMs: 3000, round: false })
})

it('goes round in one bar, in several, and in bars named in the wrong order', () => {
  expect(loopedBars(barsOf(0, 1, 2, 3), 2, 2)).toEqual({ fromMs: 2000, toMs: 3000, round: true })
  expect(seconds(loopedBars(barsOf(0, 1, 2, 3), 1, 2))).toEqual([1, 3])
  expect(seconds(loopedBars(barsOf(0, 1, 2, 3), 3, 1))).toEqual([1, 4])
})

// Bars 1 and 2 repeated, 2 and 3 as first and second ending: 1 2 1 3.
it('plays what lies between as the repeats say', () => {
  const played = barsOf(1, 2, 1, 3, 4)
  expect(seconds(loopedBars(played, 1, 2))).toEqual([0, 2])
  expect(seconds(loopedBars(played, 1, 3))).toEqual([0, 4])
  expect(seconds(loopedBars(played, 2, 3))).toEqual([1, 4])
  expect(seconds(loopedBars(played, 3, 4))).toEqual([3, 5])
})
