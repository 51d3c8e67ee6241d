import { type Metre, TICKS_PER_QUARTER, type Ticks } from '@barwise/parser'
import type { PageWords } from './page-words.ts'
import type { NoteValue, TempoMark } from './tempo-mark.ts'

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

/** Notes as they stand in a tempo mark, and the dot behind them. Source: SMuFL 1.4, range "Metronome marks". */
const METRONOME_SIGNS: Readonly<Record<NoteValue['base'], string>> = {
  1: '\ueca2',
  2: '\ueca3',
  4: '\ueca5',
  8: '\ueca7',
  16: '\ueca9',
  32: '\uecab',
}
const METRONOME_DOT = '\uecb7'

/** A note value as signs of a music face, as in a tempo mark. */
export function metronomeSigns({ base, dotted }: NoteValue): string {
  return METRONOME_SIGNS[base] + (dotted ? METRONOME_DOT : '')
}

/** What stands behind the note of a tempo mark, as in "= 72 to 84": the tempo, and the one to reach where it is another. */
export function tempoFigures({ bpm, goalBpm }: Pick<TempoMark, 'bpm' | 'goalBpm'>, words: PageWords): string {
  const goal = goalBpm === null || goalBpm === bpm ? '' : ` ${words.upTo(goalBpm).replaceAll(' ', '\u00a0')}`
  return `=\u00a0${bpm}${goal}`
}

/** Ticks of the counted beat: the unit of the metre, or the bar cut into `count` beats. */
export function countedBeatTicks(metre: Metre, count: number | null): Ticks {
  const unitTicks = WHOLE_TICKS / metre.unit
  return count === null ? unitTicks : (unitTicks * metre.count) / count
}
