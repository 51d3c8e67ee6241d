import type { Finger } from '@barwise/parser'

/** Strings that one finger keeps quiet: with its tip, lying flat, with both, or the thumb over the edge of the neck. */
export interface QuietStrings {
  readonly strings: readonly number[]
  readonly how: 'tip' | 'flat' | 'both' | 'thumb'
  /** Null for the thumb. */
  readonly finger: Finger | null
}
