import type { Span } from '../source/span.ts'
import type { FindingCode } from './codes.ts'
import type { Severity } from './severity.ts'

/** A stretch of a file for people: lines and columns from 1, columns in UTF-16 units, end exclusive. */
export interface Place {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
}

/** Another place that helps to understand a finding, with the few words that say how. */
export interface RelatedPlace {
  readonly place: Place
  readonly message: string
}

/** One mistake, or one thing worth knowing, at its exact place. */
export interface Finding {
  readonly code: FindingCode
  readonly severity: Severity
  /** One line in the writer's words, without a full stop. */
  readonly message: string
  /** How to mend it: starts with a verb. */
  readonly help: string
  readonly place: Place
  /** The same place in offsets, cut to the file. */
  readonly span: Span
  /** The bar that the message names; null where it names none. */
  readonly bar: number | null
  readonly related: readonly RelatedPlace[]
}
