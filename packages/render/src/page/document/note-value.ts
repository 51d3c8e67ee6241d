import { type Metre, TICKS_PER_QUARTER, type Ticks } from '@barwise/parser'
import type { NoteValue } from './document-block.ts'

const WHOLE_TICKS = 4 * TICKS_PER_QUARTER

/** The note value of a beat, as in `noteValueOf(5040)` = a dotted quarter. A length that is no plain or dotted value counts as a quarter. */
export function noteValueOf(beatTicks: Ticks): NoteValue {
  for (const base of [1, 2, 4, 8, 16, 32] as const) {
    const ticks = WHOLE_TICKS / base
    if (beatTicks === ticks) return { base, dotted: false }
    if (beatTicks === ticks * 1.5) return { base, dotted: true }
  }
  return { base: 4, dotted: false }
}

/** Ticks of the counted beat: the unit of the metre, or the bar cut into `count` beats. */
export function countedBeatTicks(metre: Metre, count: number | null): Ticks {
  const unitTicks = WHOLE_TICKS / metre.unit
  return count === null ? unitTicks : (unitTicks * metre.count) / count
}
