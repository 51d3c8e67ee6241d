import type { Severity } from '@barwise/parser'

/** The words that only the teacher's edition speaks. */
export interface TeacherWords {
  readonly severity: Readonly<Record<Severity, string>>
  /** The heading over what the check found. */
  readonly noted: string
  /** Beside that heading: how many findings stand where they belong, and whether more follow. Starts small, no full stop. */
  readonly placed: (count: number, more: boolean) => string
  /** That there is none, beside that heading. */
  readonly nothing: string
  /** A line of the lesson's file. */
  readonly line: (number: number) => string
  /** That the findings are in English; null where the page is too. */
  readonly inEnglish: string | null
}
