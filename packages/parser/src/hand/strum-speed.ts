import type { Event } from '../score/event.ts'
import type { Bar, Group } from '../score/part.ts'
import { type Grid, slotTicks } from '../score/time.ts'

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

/** The coarsest grid that carries all strokes of a bar save those inside tuplets, never finer than its own; null without strokes. */
export function coarsestGrid(bar: Bar): Grid | null {
  const strokes = handStrokes(bar)
  const cut = ({ at }: Event): boolean => bar.groups.some((group) => at > group.at && at < group.at + group.length)
  const even = strokes.filter((event) => !cut(event))
  return strokes.length === 0 ? null : gridOf(even, bar)
}

/** The coarsest grid that carries some events of a bar; the bar's own where none does. */
export function gridOf(events: readonly Event[], bar: Bar): Grid {
  const fits = (grid: Grid): boolean => events.every((event) => event.at % slotTicks(grid) === 0)
  return (
    GRIDS.find(
      (grid) => grid <= bar.grid && slotTicks(grid) <= Math.max(bar.beatTicks, slotTicks(bar.grid)) && fits(grid),
    ) ?? bar.grid
  )
}

/**
 * Full swings of the strumming hand a second in a bar, at a tempo in the bar's beats a minute: tempo x slots a beat / 120, where a
 * tuplet counts the strokes it has; for a hand that only strikes down strokes a beat / 60, where they are nearest to each other.
 * Null for a bar without strokes.
 *
 * @example sixteenths in quarter beats at 90: 3
 */
export function handCyclesHz(bar: Bar, tempoBpm: number = bar.tempoBpm): number | null {
  if (bar.stroke === 'pluck') return null
  const grid = coarsestGrid(bar)
  if (grid === null) return null
  if (bar.stroke === 'down') return (tempoBpm * bar.beatTicks) / nearestTicks(bar) / 60
  const slotsABeat = bar.beatTicks / slotTicks(grid)
  return (tempoBpm * Math.max(slotsABeat, ...bar.groups.map((group) => strokesABeat(bar, group)))) / 120
}

/** Ticks between the two strokes of a bar that are nearest to each other; the bar's length when there is one. */
function nearestTicks(bar: Bar): number {
  const at = handStrokes(bar).map((event) => event.at)
  return Math.min(bar.length, ...at.slice(1).map((ticks, index) => ticks - (at[index] ?? 0)))
}

/** Strokes a beat inside a tuplet; none for one shorter than a beat, which is a flick of the wrist and no speed to keep up. */
function strokesABeat(bar: Bar, group: Group): number {
  if (group.length < bar.beatTicks) return 0
  const inside = handStrokes(bar).filter(({ at }) => at >= group.at && at < group.at + group.length)
  return (inside.length * bar.beatTicks) / group.length
}
