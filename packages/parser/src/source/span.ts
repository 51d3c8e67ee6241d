/** A stretch of one source file: half-open, UTF-16 code units from the start of the file. */
export interface Span {
  readonly start: number
  readonly end: number
}

/** A place in a file as people count it: line and column from 1, columns in UTF-16 units; the offset from 0. */
export interface Point {
  readonly line: number
  readonly column: number
  readonly offset: number
}

/** One source file: its name as given, and its text exactly as read (line endings untouched). */
export interface SourceFile {
  readonly path: string
  readonly text: string
}
