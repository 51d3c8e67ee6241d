import type { Mark, WrittenTarget } from '../score/event.ts'
import type { Finger } from '../score/shape.ts'
import type { Span } from '../source/span.ts'

/** A note of a sign's target, before anything is known of what sounds around it. A null fret is a dead string. */
export interface TargetNote {
  readonly string: number
  readonly fret: number | null
  readonly finger: Finger | null
  readonly fingerGiven: boolean
}

/** The letters before the colon. */
export interface Actions {
  readonly direction: 'down' | 'up' | null
  readonly technique: 'hammer' | 'pull' | 'slide' | null
  readonly palmMuted: boolean
  readonly rolled: boolean
}

/** What one stroke sign says. */
export type SignMeaning =
  | { readonly kind: 'hold' }
  | { readonly kind: 'silence'; readonly slideOff: boolean }
  | {
      readonly kind: 'scratch'
      readonly strings: readonly number[] | null
      readonly actions: Actions
      readonly marks: readonly Mark[]
    }
  | {
      readonly kind: 'notes'
      readonly actions: Actions
      readonly target: WrittenTarget
      readonly notes: readonly TargetNote[]
      readonly marks: readonly Mark[]
    }
  /** Could not be read: it has been reported, and nothing may be concluded from it. */
  | { readonly kind: 'lost' }

/** A stroke sign as it stands in the file. */
export interface StrokeSign {
  /** With plain signs for typographic ones. */
  readonly text: string
  readonly span: Span
  readonly meaning: SignMeaning
}

/** The longest sign, in UTF-16 units. */
export const LONGEST_SIGN = 64
