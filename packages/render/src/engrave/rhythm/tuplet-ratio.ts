import { type Group, TICKS_PER_QUARTER, type Ticks } from '@barwise/parser'
import { type NoteValue, singleValue } from './note-value.ts'

/** How a cut is written: `parts` notes of `value` in the time of `normal` of them. */
export interface TupletRatio {
  readonly parts: number
  readonly normal: number
  readonly value: NoteValue
}

/**
 * The ratio a group is written with, or null when each part is a plain or dotted value and needs no figure: 3 in a quarter gives
 * eighths in the time of 2, 5 gives sixteenths in the time of 4, 4 in a dotted quarter gives dotted sixteenths and no figure. Common practice: the normal
 * count is the largest that is not above the number of parts.
 */
export function tupletRatio(group: Group): TupletRatio | null {
  if (singleValue(group.length / group.parts) !== null) return null
  let best: TupletRatio | null = null
  for (const base of [1, 2, 4, 8, 16, 32, 64, 128] as const) {
    const ticks = (4 * TICKS_PER_QUARTER) / base
    const normal = group.length / ticks
    if (!Number.isInteger(normal)) continue
    const ratio: TupletRatio = { parts: group.parts, normal, value: { base, dots: 0 } }
    if (best === null || (normal <= group.parts && normal > 0)) best = ratio
    if (normal > group.parts) break
  }
  return best
}

/** The time a stretch inside the group seems to last by its written values: three eighths for a triplet of a quarter. */
export function nominalTicks(ticks: Ticks, { parts, normal }: TupletRatio): Ticks {
  return (ticks * parts) / normal
}
