import { TICKS_PER_QUARTER, type Ticks } from '@barwise/parser'

/** A written note value: `base` 1 is a whole note, 4 a quarter, 16 a sixteenth. */
export interface NoteValue {
  readonly base: 1 | 2 | 4 | 8 | 16 | 32 | 64 | 128
  readonly dots: 0 | 1
}

const BASES = [1, 2, 4, 8, 16, 32, 64, 128] as const

/** The ticks of a value, as in `valueTicks({ base: 4, dots: 1 })` = 5040. */
export function valueTicks({ base, dots }: NoteValue): Ticks {
  const plain = (4 * TICKS_PER_QUARTER) / base
  return dots === 1 ? (plain * 3) / 2 : plain
}

/** The single value that lasts exactly so long, or null when it takes several tied together. */
export function singleValue(ticks: Ticks): NoteValue | null {
  for (const base of BASES) {
    const plain = (4 * TICKS_PER_QUARTER) / base
    if (ticks === plain) return { base, dots: 0 }
    if (ticks * 2 === plain * 3) return { base, dots: 1 }
  }
  return null
}

/** The longest single value that is no longer than so many ticks; null below a 128th. */
export function longestValueWithin(ticks: Ticks): NoteValue | null {
  for (const base of BASES) {
    for (const dots of [1, 0] as const) {
      if (valueTicks({ base, dots }) <= ticks) return { base, dots }
    }
  }
  return null
}

/** Beams or flags of a value: 0 for a quarter and longer, 1 for an eighth, 2 for a sixteenth. */
export function beamCount({ base }: NoteValue): number {
  return base < 8 ? 0 : Math.log2(base) - 2
}
