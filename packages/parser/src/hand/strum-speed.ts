import type { Event } from '../score/event.ts'
import type { Bar } from '../score/part.ts'
import { type Grid, slotTicks, TICKS_PER_QUARTER } from '../score/time.ts'

/**
 * Hand cycles a second up to which strumming is comfortable, hard, very hard: common practice, judged inside the 5-7 Hz
 * ceiling of rapid one-hand tapping (Fujii, Kudo, Ohtsuki, Oda 2009).
 */
export const COMFORTABLE_HZ = 3.5
export const HARD_HZ = 4.7
export const CEILING_HZ = 7

const GRIDS: readonly Grid[] = [4, 8, 16, 32]

/** The strokes of a bar that the strumming hand makes. */
export function handStrokes(bar: Bar): readonly Event[] {
  return bar.events.filter((event) => event.kind !== 'rest' && (event.stroke === 'down' || event.stroke === 'up'))
}

/** The coarsest grid that carries all strokes of a bar, never finer than its own; null without strokes. */
export function coarsestGrid(bar: Bar): Grid | null {
  const strokes = handStrokes(bar)
  if (strokes.length === 0) return null
  const fits = (grid: Grid): boolean => strokes.every((event) => event.at % slotTicks(grid) === 0)
  return (
    GRIDS.find(
      (grid) => grid <= bar.grid && slotTicks(grid) <= Math.max(bar.beatTicks, slotTicks(bar.grid)) && fits(grid),
    ) ?? bar.grid
  )
}

/**
 * Full swings of the strumming hand a second in a bar, at a tempo in the bar's beats a minute: tempo x slots a beat / 120,
 * for a hand that only strikes down strokes a beat / 60; null for a bar without strokes.
 *
 * @example sixteenths in quarter beats at 90: 3
 */
export function handCyclesHz(bar: Bar, tempoBpm: number = bar.tempoBpm): number | null {
  if (bar.stroke === 'pluck') return null
  const grid = coarsestGrid(bar)
  if (grid === null) return null
  const slotsABeat = bar.beatTicks / ((4 * TICKS_PER_QUARTER) / grid)
  return bar.stroke === 'down' ? (tempoBpm * slotsABeat) / 60 : (tempoBpm * slotsABeat) / 120
}
