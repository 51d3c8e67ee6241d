import type { Bar, Note, Strike } from '@barwise/parser'
import type { WrittenNote } from '../rhythm/write-rhythm.ts'
import type { AccidentalSign, NoteStamp } from '../vexflow-door/note-stamp.ts'

/** One head of a column. Lengths are staff spaces, y from the top line of the staff. */
export interface Head {
  readonly y: number
  readonly accidental: AccidentalSign | null
  /** The note it writes; null for the crosses of a scratch and of dead strings. */
  readonly note: Note | null
  /** Left edge from the centre of the column. */
  readonly x: number
}

/** Beamed columns in order; rests between them are not listed. */
export interface BeamGroup {
  readonly columns: readonly Column[]
}

/** One written note, chord, scratch or rest as it is set. Lengths are staff spaces. */
export interface Column {
  readonly written: WrittenNote
  readonly bar: Bar
  readonly kind: 'notes' | 'scratch' | 'rest'
  /** Highest first. */
  readonly heads: readonly Head[]
  readonly stem: 'up' | 'down'
  /** Whether flags hang on a beam; the group says with whom. */
  readonly beamed: boolean
  /** Null for scratches, which are drawn as crosses. */
  readonly stamp: NoteStamp | null
  /** In brackets: ghosted, or sounding on from before the start of an excerpt. */
  readonly bracketed: boolean
  /** Reach of all ink to the left and right of the centre of the heads. */
  readonly left: number
  readonly right: number
  /** Left reach of heads and accidentals alone, right reach of heads, dots and flag alone. */
  readonly headLeft: number
  readonly headRight: number
  readonly tab: TabColumn
}

/** What a column prints in the tab. */
export interface TabColumn {
  readonly figures: readonly { readonly string: number; readonly text: string }[]
  /** Strings with a cross. */
  readonly crosses: readonly number[]
  readonly bracketed: boolean
  /** Half the width of its widest figure. */
  readonly half: number
}

/** The strike of a column, null for scratches and rests. */
export function strikeOf(column: Column): Strike | null {
  return column.written.event.kind === 'strike' ? column.written.event : null
}

/** Whether the column is struck and slid into. */
export function isSlidInto(column: Column): boolean {
  const strike = strikeOf(column)
  return strike !== null && strike.technique === 'slide' && strike.stroke !== null && !column.written.tiedIn
}

/** Whether a column is sounded by the fretting hand alone, from the column before. */
export function isUnstruck(column: Column): boolean {
  const strike = strikeOf(column)
  return strike !== null && strike.technique !== null && strike.stroke === null && !column.written.tiedIn
}
