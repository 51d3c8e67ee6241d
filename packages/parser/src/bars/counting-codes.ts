import type { FindingCode } from '../finding/codes.ts'

/** Findings that only say that something does not add up: they mean nothing where time or grid could not be read. */
export const COUNTING_CODES: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'wrong-slot-count',
  'no-such-beat',
  'misplaced-beat-bar',
  'cut-does-not-divide',
  'missing-beat',
  'chords-off-grid',
  'pickup-gap',
  'pickup-full',
])
