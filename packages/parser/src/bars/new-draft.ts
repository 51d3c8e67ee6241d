import { beatTicksOf } from '../markdown/setting-values.ts'
import { barTicks } from '../score/time.ts'
import type { Span } from '../source/span.ts'
import type { BarDraft, BarSettings } from './draft.ts'
import { countIn, type Reading } from './reading.ts'

/** An empty bar under the settings in force and its own; it takes the section that waits for a bar. */
export function newDraft(
  bar: {
    readonly number: number
    readonly own: Partial<BarSettings>
    readonly span: Span
    readonly copyOf: number | null
  },
  reading: Reading,
): BarDraft {
  const settings = { ...reading.inForce, ...bar.own }
  const beatTicks = beatTicksOf(settings.metre, countIn(settings, reading))
  const section = reading.section?.name ?? null
  reading.section = null
  return {
    ...bar,
    settings,
    inForce: reading.inForce,
    beatTicks,
    beats: barTicks(settings.metre) / beatTicks,
    section,
    segments: [],
    chords: null,
    alternatives: [],
    remarks: [],
  }
}
