import type { Span } from '../source/span.ts'
import type { FindingCode } from './codes.ts'
import type { Severity } from './severity.ts'

/** A finding as a reader or rule states it: offsets instead of lines and columns, the severity left to its code. */
export interface FindingDraft {
  readonly code: FindingCode
  readonly span: Span
  /** One line in the writer's words, without a full stop. */
  readonly message: string
  /** How to mend it: starts with a verb. */
  readonly help: string
  readonly related?: readonly { readonly span: Span; readonly message: string }[]
  /** A mistake that is made again and again, word by word: inside a block it is told where it stands first, with how often it comes again. */
  readonly once?: true
  /** Set where how grave it is depends on the case; else that of the code. */
  readonly severity?: Severity
  /** The file that `span` counts in, when it is not the lesson itself (a shared shape file). */
  readonly file?: string
  /** The bar that `message` names, where it names one: a line that copies several bars does not say which of them is meant. */
  readonly bar?: number
}

/** Takes a finding while something is read. */
export type Report = (draft: FindingDraft) => void
