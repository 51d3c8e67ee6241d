import type { StrokeStyle } from '../score/part.ts'
import type { Key } from '../score/pitch.ts'
import type { Feel, Grid, Metre, Ticks } from '../score/time.ts'
import type { Span } from '../source/span.ts'
import type { StrokeSign } from './stroke-sign.ts'

/** What a bar is played under. */
export interface BarSettings {
  readonly metre: Metre
  readonly grid: Grid
  readonly key: Key
  readonly tempoBpm: number
  readonly feel: Feel
  readonly stroke: StrokeStyle
}

/** A sign with its time in the full bar (a pickup counts as the end of one) and the way the pendulum swings there. */
export interface PlacedSign {
  readonly sign: StrokeSign
  readonly at: Ticks
  readonly duration: Ticks
  /** Where the hand goes when strokes alternate. */
  readonly swing: 'down' | 'up'
  /** The copy that brought it in, null where it was typed. */
  readonly copy: Span | null
  /** The sign it was copied from. */
  readonly origin: PlacedSign | null
}

/** A cut or bracket that leaves the grid; times in the full bar. */
export interface PlacedGroup {
  readonly at: Ticks
  readonly length: Ticks
  readonly parts: number
}

/** Beats that cannot be taken apart, with their signs in time. */
export interface Segment {
  readonly firstBeat: number
  readonly lastBeat: number
  readonly signs: readonly PlacedSign[]
  readonly groups: readonly PlacedGroup[]
}

/** An `or` line. */
export interface AlternativeDraft {
  readonly firstBeat: number
  readonly lastBeat: number
  readonly segments: readonly Segment[]
  readonly span: Span
}

/** A `chords` entry; `-` entries are left out. */
export interface WrittenChord {
  readonly at: Ticks
  readonly symbol: string | null
  readonly span: Span
}

/** A bar as written, its copies done, before it is played. */
export interface BarDraft {
  /** 0 is the pickup. */
  readonly number: number
  readonly settings: BarSettings
  /** What its own line (or that of its source) sets beside what is in force. */
  readonly own: Partial<BarSettings>
  /** What `from` and the part had in force where it stands. */
  readonly inForce: BarSettings
  readonly beatTicks: Ticks
  readonly beats: number
  readonly section: string | null
  readonly copyOf: number | null
  readonly span: Span
  /** In order of their beats. */
  segments: readonly Segment[]
  /** Null when the bar has no `chords`. */
  chords: readonly WrittenChord[] | null
  alternatives: readonly AlternativeDraft[]
  remarks: readonly { readonly beat: number | null; readonly text: string; readonly span: Span }[]
}
