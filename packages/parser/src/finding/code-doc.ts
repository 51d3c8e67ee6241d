import type { Severity } from './severity.ts'

/** What the command line explains about a code. `bad` and `good` are lesson text that run as tests. */
export interface CodeDoc {
  readonly severity: Severity
  /** What has happened, in one or two sentences for a teacher. */
  readonly says: string
  /** Which characters the finding points at. */
  readonly covers: string
  /** A piece of lesson that gives exactly this finding. */
  readonly bad: string
  /** The same piece mended. */
  readonly good: string
}
