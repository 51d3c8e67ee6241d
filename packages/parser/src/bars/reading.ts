import type { PartAttributes } from '../score/part-attributes.ts'
import type { Span } from '../source/span.ts'
import type { BarContext } from './context.ts'
import type { BarDraft, BarSettings } from './draft.ts'
import { closeBar, type OpenBar } from './open-bar.ts'
import type { EndingLine, RepeatLine } from './repeat-lines.ts'

/** One line on its way through the reader: raw and with plain signs. */
export interface Line {
  readonly raw: string
  readonly text: string
  readonly offset: number
  readonly span: Span
}

/** What has been read of a part so far. */
export interface Reading {
  readonly context: BarContext
  readonly attributes: PartAttributes
  readonly bars: Map<number, BarDraft>
  /** Numbers of bars that a faulty line named: nothing is said of them again. */
  readonly lost: { first: number; last: number }[]
  readonly repeats: RepeatLine[]
  readonly endings: EndingLine[]
  lostJoin: boolean
  inForce: BarSettings
  open: OpenBar | null
  nextBar: number
  /** The section that the next bar begins; `missed` when a bar that should have begun it was lost. */
  section: { readonly name: string; readonly span: Span; readonly missed: boolean } | null
  from: { readonly bar: number; readonly span: Span } | null
  strayReported: boolean
  /** The bar that beats without one have been read into; its own line may still come. */
  impliedBar: number | null
}

/** A part of which nothing has been read. */
export function startReading(attributes: PartAttributes, context: BarContext): Reading {
  const { metre, grid, key, tempoBpm, feel, stroke } = attributes
  return {
    context,
    attributes,
    bars: new Map(),
    lost: [],
    repeats: [],
    endings: [],
    lostJoin: false,
    inForce: { metre, grid, key, tempoBpm, feel, stroke },
    open: null,
    nextBar: 1,
    section: null,
    from: null,
    strayReported: false,
    impliedBar: null,
  }
}

/** Puts the open bar together; what follows stands in no bar until the next one opens. */
export function close(reading: Reading): void {
  if (reading.open !== null) closeBar(reading.open, reading.context)
  reading.open = null
  reading.strayReported = false
}

/** Whether a bar's number was used up by a faulty line. */
export function isLost(bar: number, { lost }: Reading): boolean {
  return lost.some(({ first, last }) => first <= bar && bar <= last)
}

/** The beats counted in a bar: those of the part's count only in the part's own time. */
export function countIn(settings: BarSettings, { attributes }: Reading): number | null {
  const own = attributes.metre
  return settings.metre.count === own.count && settings.metre.unit === own.unit ? attributes.count : null
}
