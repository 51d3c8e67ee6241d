import type { Group, Ticks } from '@barwise/parser'
import { type NoteValue, singleValue, valueTicks } from './note-value.ts'

/** How a cut is written: `parts` notes of `value` in the time of `normal` of them. */
export interface TupletRatio {
  readonly parts: number
  readonly normal: number
  readonly value: NoteValue
}

/**
 * The ratio a group is written with, or null when each part is a plain or dotted value and needs no figure: 3 in a quarter gives
 * eighths in the time of 2, 5 gives sixteenths in the time of 4, 4 in a dotted quarter gives dotted sixteenths and no figure. Common practice: the
 * normal count is the largest that is not above the number of parts, of plain values, else of dotted ones (4 in a bar of 9/8 are dotted quarters in
 * the time of 3), else the smallest above it (2 in a bar of 9/8).
 */
export function tupletRatio(group: Group): TupletRatio | null {
  if (singleValue(group.length / group.parts) !== null) return null
  const ratios = ([0, 1] as const).flatMap((dots) =>
    ([1, 2, 4, 8, 16, 32, 64, 128] as const).flatMap((base): readonly TupletRatio[] => {
      const normal = group.length / valueTicks({ base, dots })
      return Number.isInteger(normal) ? [{ parts: group.parts, normal, value: { base, dots } }] : []
    }),
  )
  const within = (dots: 0 | 1): TupletRatio | undefined =>
    ratios.findLast(({ normal, value }) => value.dots === dots && normal <= group.parts)
  const above = ratios.toSorted((a, b) => a.normal - b.normal).find(({ normal }) => normal > group.parts)
  return within(0) ?? within(1) ?? above ?? null
}

/** The time a stretch inside the group seems to last by its written values: three eighths for a triplet of a quarter. */
export function nominalTicks(ticks: Ticks, { parts, normal }: TupletRatio): Ticks {
  return (ticks * parts) / normal
}
