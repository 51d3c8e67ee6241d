import type { Span } from '../source/span.ts'
import type { Event } from './event.ts'
import type { Key } from './pitch.ts'
import type { Feel, Grid, Metre, Ticks } from './time.ts'

/** A chord symbol where it begins to hold; a null symbol is "no chord". */
export interface ChordAt {
  /** Ticks from the start of the bar. */
  readonly at: Ticks
  readonly symbol: string | null
  /** Whether the writer wrote it (`chords`), or it comes from a shape's label. */
  readonly written: boolean
  /** Where the writer wrote it; not given for a shape's label. */
  readonly span?: Span
}

/** A stretch cut into equal parts that leave the grid: a tuplet. Times in ticks from the start of the bar. */
export interface Group {
  readonly at: Ticks
  readonly length: Ticks
  readonly parts: number
}

/** Another way to play a stretch of the bar. */
export interface Alternative {
  readonly at: Ticks
  readonly length: Ticks
  readonly groups: readonly Group[]
  readonly events: readonly Event[]
  readonly span: Span
}

/** The teacher's words for a beat (`at` in ticks from the start of the bar) or for the whole bar (null). */
export interface Remark {
  readonly at: Ticks | null
  readonly text: string
  readonly span: Span
}

/** The hand that strikes: alternate strokes, all down, or plucked with thumb and fingers. */
export type StrokeStyle = 'alternate' | 'down' | 'pluck'

export type Touch = 'light' | 'full'

export interface Bar {
  /** 0 is the pickup. */
  readonly number: number
  /** Ticks from the start of bar 1; 0 for the pickup, which has a time of its own. */
  readonly start: Ticks
  /** Its real length; a pickup is shorter than its metre. */
  readonly length: Ticks
  readonly metre: Metre
  readonly grid: Grid
  /** Ticks of one beat line: the unit of the metre, or the dotted value when `count` says so. */
  readonly beatTicks: Ticks
  /** How many of the bar's beats are missing before it starts: 0 except for a pickup. Beat numbers go on from there. */
  readonly firstBeat: number
  readonly key: Key
  /** Beats of the part's count a minute. */
  readonly tempoBpm: number
  readonly feel: Feel
  readonly stroke: StrokeStyle
  /** The name of the section that starts here. */
  readonly section: string | null
  /** The symbols that begin in this bar. */
  readonly chords: readonly ChordAt[]
  readonly groups: readonly Group[]
  /** Those that begin in this bar, in order. What is held in from the bar before is not repeated. */
  readonly events: readonly Event[]
  readonly alternatives: readonly Alternative[]
  readonly remarks: readonly Remark[]
  /** The first earlier bar (never the pickup) that sounds the same, found by comparison. */
  readonly sameAs: number | null
  /** The bar it was written as a copy of. */
  readonly copyOf: number | null
  /** The line that opens it. */
  readonly span: Span
}

export interface Ending {
  readonly numbers: readonly number[]
  readonly from: number
  readonly to: number
}

/** Bars `from` to `to` played `times` times in all. */
export interface Repeat {
  readonly from: number
  readonly to: number
  readonly times: number
  readonly endings: readonly Ending[]
}

/** What a part prints where it stands. */
export type PartView = 'sheet' | 'cards' | 'plan'

export interface Part {
  readonly id: string
  readonly title: string
  readonly stroke: StrokeStyle
  /** Beats counted in a compound bar (`count=2` on 6/8), null when the unit of the metre is counted. */
  readonly count: number | null
  readonly touch: Touch
  readonly show: readonly PartView[]
  /** In order; a pickup comes first as bar 0. */
  readonly bars: readonly Bar[]
  readonly repeats: readonly Repeat[]
  /** The whole block in the file. */
  readonly span: Span
}
