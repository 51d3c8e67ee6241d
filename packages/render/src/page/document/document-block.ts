import type { BarRange, FormEntry, Inline, Part, Shape } from '@barwise/parser'
import type { BarNote, MarginNote } from './margin-note.ts'
import type { TempoMark } from './tempo-mark.ts'

/** One thing a player must know before the first note. The name says what it is, so that surfaces can label it. */
export type Fact =
  | { readonly kind: 'tempo'; readonly tempo: TempoMark }
  | {
      readonly kind: 'words'
      readonly name: 'instrument' | 'metre' | 'key' | 'feel' | 'tuning' | 'capo' | 'touch' | 'level' | 'symbols'
      readonly text: string
    }

/** The head of a lesson. */
export interface LessonHead {
  readonly title: string
  readonly subtitle: string | null
  readonly author: string | null
  /** Which edition it is, where that must be said; null for the pupil's. */
  readonly edition: string | null
  readonly facts: readonly Fact[]
}

/** An item of a list in the document: the flow inside it. */
export interface DocumentItem {
  readonly blocks: readonly DocumentBlock[]
}

/** A part's name where it starts, its tempo, and a sentence on its form ("eight bars, twice through"). */
export interface PartHead {
  readonly kind: 'part-head'
  readonly part: Part
  readonly title: string
  readonly tempo: TempoMark
  /** Starts small and has no full stop: it stands beside the title. */
  readonly about: string
  readonly anchor: string
}

/** What the check found in a lesson, at its end: the teacher's edition only. */
export interface CheckNotes {
  readonly kind: 'check-notes'
  readonly title: string
  /** How many stand elsewhere; starts small and has no full stop, may be empty. */
  readonly about: string
  /** Those that belong to no bar and no shape that is printed. */
  readonly notes: readonly MarginNote[]
  /** Said once for all findings: the care that reach and speed ask for, the language they are in. */
  readonly remarks: readonly string[]
}

/**
 * What a lesson prints, in order. References are resolved to the shapes and parts themselves, quotation marks are true ones,
 * heading levels start at 2 under the lesson's title and never skip. No drawings and no lengths: each surface makes its own.
 */
export type DocumentBlock =
  | { readonly kind: 'heading'; readonly level: 2 | 3 | 4 | 5 | 6; readonly children: readonly Inline[] }
  | { readonly kind: 'paragraph'; readonly children: readonly Inline[] }
  | {
      readonly kind: 'list'
      readonly ordered: boolean
      readonly start: number
      readonly tight: boolean
      readonly items: readonly DocumentItem[]
    }
  | { readonly kind: 'quote'; readonly blocks: readonly DocumentBlock[] }
  | { readonly kind: 'code-block'; readonly language: string | null; readonly text: string }
  | { readonly kind: 'rule' }
  | {
      readonly kind: 'table'
      readonly align: readonly ('left' | 'right' | 'center' | null)[]
      readonly header: readonly (readonly Inline[])[]
      readonly rows: readonly (readonly (readonly Inline[])[])[]
    }
  /** A row of chord grids, or several rows when they do not fit one. `notes` only in the teacher's edition. */
  | { readonly kind: 'shapes'; readonly shapes: readonly Shape[]; readonly notes: readonly MarginNote[] }
  | PartHead
  /** Staff and tab of the bars (all of them when null). */
  | { readonly kind: 'systems'; readonly part: Part; readonly bars: BarRange | null }
  /** One card for each distinct bar; `title` is the section's name ("Bar by bar"). `notes` only in the teacher's edition. */
  | {
      readonly kind: 'cards'
      readonly part: Part
      readonly bars: BarRange | null
      readonly title: string
      readonly notes: readonly BarNote[]
    }
  /** The strum strip alone. */
  | { readonly kind: 'strip'; readonly part: Part; readonly bars: BarRange | null }
  /** The practice plan; the care note always stands with it. */
  | { readonly kind: 'plan'; readonly part: Part; readonly title: string }
  /** The order in which parts and sections are played. */
  | { readonly kind: 'form'; readonly entries: readonly FormEntry[] }
  /** Empty staves to write in, for the strings and the clef of the lesson. */
  | { readonly kind: 'blank'; readonly bars: number }
  /** `:::care` and, in the teacher's edition, `:::teacher`. */
  | {
      readonly kind: 'container'
      readonly role: 'teacher' | 'care'
      readonly title: string
      readonly blocks: readonly DocumentBlock[]
    }
  /** Stands where an answer was written: the answer itself is printed at the back under this number. */
  | { readonly kind: 'answer-note'; readonly number: number; readonly text: string; readonly anchor: string }
  | CheckNotes
  | { readonly kind: 'page-break' }

/** An answer held back for the end. */
export interface Answer {
  readonly number: number
  readonly title: string
  readonly blocks: readonly DocumentBlock[]
  readonly anchor: string
}

/** The one ordered content of a lesson that every surface prints. */
export interface LessonDocument {
  readonly kind: 'lesson-document'
  /** Short name made from the file's name; unique in a book, and the start of every anchor. */
  readonly id: string
  readonly language: string
  readonly head: LessonHead
  readonly flow: readonly DocumentBlock[]
  readonly answers: readonly Answer[]
}
