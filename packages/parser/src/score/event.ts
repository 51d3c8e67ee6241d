import type { Span } from '../source/span.ts'
import type { Finger } from './shape.ts'
import type { Ticks } from './time.ts'

/** How a note begins. `held`: it goes on from the event before. `dead`: struck but silenced. */
export type NoteStart = 'struck' | 'hammered' | 'pulled' | 'slid' | 'held' | 'dead'

/** One sounding (or dead) string of a strike. */
export interface Note {
  /** 1 is the string nearest the floor. */
  readonly string: number
  /** Counted from the capo; null when dead. */
  readonly fret: number | null
  /** Null for open strings, dead notes, and until it is worked out. */
  readonly finger: Finger | null
  /** Whether the writer gave the finger in the sign itself; those of a shape are given where the shape says so. */
  readonly fingerGiven: boolean
  /** Sounding MIDI number, capo included; null when dead. */
  readonly midi: number | null
  /** Written pitch in scientific notation, as fingered, such as `C#5`; null when dead. */
  readonly written: string | null
  readonly from: NoteStart
  /** Where a hammered, pulled or slid note comes from; null for a slide from a fret below, and for all other notes. */
  readonly fromFret: number | null
  /** Ticks from the start of the event's bar to the end of a note that rings past its event; null otherwise. */
  readonly ringsTo: Ticks | null
}

export type Mark = 'accent' | 'ghost' | 'ring' | 'short' | 'slide-off' | 'vibrato'

/** Direction of the strumming hand; `pluck` is thumb and fingers together; null is an unstruck action. */
export type Stroke = 'down' | 'up' | 'pluck' | null

/** The fretting hand's action on an event. */
export type Technique = 'hammer' | 'pull' | 'slide'

/** What the writer typed to get the notes of a strike; views use it to name things as the writer thinks of them. */
export interface WrittenTarget {
  /** The shape's name, null for a notes target. */
  readonly shape: string | null
  /** Frets by which the shape is moved (`^-1`), 0 when it is not. */
  readonly shift: number
  /** The strings named after `@`, null when the whole shape is meant. */
  readonly only: readonly number[] | null
  /** Notes added to or replaced in the shape; a null fret is a string struck dead. */
  readonly added: readonly { readonly string: number; readonly fret: number | null }[]
}

interface Sounding {
  /** Ticks from the start of its bar. */
  readonly at: Ticks
  /** Ticks, holds included; may reach over bar lines. */
  readonly duration: Ticks
  /** The stroke sign that made it, or the line of the copy that brought it in. */
  readonly span: Span
}

/** Notes that begin together: struck, plucked, or sounded by the fretting hand alone. */
export interface Strike extends Sounding {
  readonly kind: 'strike'
  readonly voice: 1
  readonly stroke: Stroke
  /** Whether the writer overrode the direction with `d:` or `u:`. */
  readonly strokeGiven: boolean
  readonly technique: Technique | null
  readonly target: WrittenTarget
  /** Highest string number first. */
  readonly notes: readonly Note[]
  /** In alphabetical order. */
  readonly marks: readonly Mark[]
  readonly palmMuted: boolean
  readonly rolled: boolean
}

/** A muted stroke across the strings. */
export interface Scratch extends Sounding {
  readonly kind: 'scratch'
  readonly stroke: Stroke
  readonly strokeGiven: boolean
  /** The strings the writer named, null when none were. */
  readonly strings: readonly number[] | null
  /** The strings the page shows it on: those named, else those of the shape before (before the first: of the first after). */
  readonly shownOn: readonly number[]
  readonly marks: readonly Mark[]
  readonly palmMuted: boolean
}

export interface Rest extends Sounding {
  readonly kind: 'rest'
}

export type Event = Strike | Scratch | Rest
