import type { Finger, Mark, Shape, Stroke, Technique, Ticks } from '@barwise/parser'
import type { CountName } from './count-name.ts'

/** One finger (or none known) at one fret on one or more strings. Fret 0 is open, null is struck dead. Highest string number first. */
export interface Press {
  readonly finger: Finger | null
  readonly fret: number | null
  readonly strings: readonly number[]
  /** Whether the finger lies flat over every string between the first and the last of them. */
  readonly flat: boolean
}

/** How a target is named, given what the hand did before. */
export type What =
  | {
      readonly kind: 'shape'
      readonly name: string
      /** Frets it is moved from its own place. */
      readonly shift: number
      /** Strings that are caught, null for all. */
      readonly only: readonly number[] | null
      readonly added: readonly Press[]
      /** Whether it is the shape in hand already, was in hand earlier in this card, or is new to the hand here. */
      readonly hand: 'new' | 'again' | 'back'
    }
  /** Only strings of what is in hand. */
  | { readonly kind: 'catch'; readonly strings: readonly number[] }
  /** The shape in hand with more notes. */
  | { readonly kind: 'add'; readonly presses: readonly Press[] }
  /** The shape in hand as a whole, frets up (above 0) or down; `home` when that is its own place. */
  | { readonly kind: 'move'; readonly frets: number; readonly home: boolean }
  | { readonly kind: 'notes'; readonly presses: readonly Press[] }
  /** The same strings and frets as the stroke before. */
  | { readonly kind: 'same'; readonly strings: readonly number[] }

/** Where a struck slide comes from: just below, so many frets below (above 0) or above, or string by string (null is just below). */
export type SlideFrom =
  | { readonly kind: 'below' }
  | { readonly kind: 'frets'; readonly frets: number }
  | { readonly kind: 'each'; readonly strings: readonly { readonly string: number; readonly fret: number | null }[] }

/** How long a sound lasts when that is longer than its slot. */
export type Lasting =
  | { readonly kind: 'beat' }
  | { readonly kind: 'over' }
  | { readonly kind: 'through'; readonly to: CountName }
  | { readonly kind: 'bar-line' }

/** How far notes marked to ring go on: until their strings are needed again, the last count before they are stopped, or past the bar line. */
export type Ringing =
  | { readonly kind: 'own' }
  | { readonly kind: 'through'; readonly to: CountName }
  | { readonly kind: 'bar-line' }

/** How the fretting hand silences what sounded: pressure off, or laid flat where open strings sounded. */
export type Silencing = 'ease' | 'flat' | null

/** Where a cut is announced: how many equal parts, and the places or beats they fill. */
export interface Split {
  readonly parts: number
  readonly over:
    | { readonly kind: 'beat'; readonly beat: number }
    | { readonly kind: 'beats'; readonly from: number; readonly to: number }
    | { readonly kind: 'places'; readonly places: readonly CountName[] }
}

/** Fingers of a shape that move though its name stays: for a note that is added, and when it goes. */
export interface FingerMoves {
  /** Fingers that leave, added ones of the stroke before. */
  readonly lifted: readonly Finger[]
  /** Fingers that held an added note and go back to their own strings. */
  readonly returned: readonly FingerPlace[]
  /** Fingers that take strings over from a finger that is needed for an added note. */
  readonly taken: readonly FingerPlace[]
}

/** A finger and the strings it presses, highest string number first. */
export interface FingerPlace {
  readonly finger: Finger
  readonly strings: readonly number[]
}

interface Told {
  /** Ticks from the start of the bar; the end may pass the bar line. */
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
}

interface Placed extends Told {
  readonly place: CountName
  /** Whether the place must be said because it is not simply the next slot. */
  readonly sayPlace: boolean
  /** Cuts that begin here, the widest first. */
  readonly splits: readonly Split[]
}

/** One thing said: a shape described, a run of strokes, a sound of the fretting hand alone, a silence, a remark. */
export type Instruction =
  | (Told & { readonly kind: 'describe'; readonly shape: Shape; readonly presses: readonly Press[] })
  | (Told & {
      readonly kind: 'describe-like'
      readonly shape: Shape
      readonly like: string
      readonly presses: readonly Press[]
      readonly silent: readonly number[]
    })
  /** What easing is, told where a part first asks for it. */
  | (Told & { readonly kind: 'explain-ease' })
  | (Placed & {
      readonly kind: 'strike'
      readonly what: What
      readonly strokes: readonly Stroke[]
      /** Whether the part's way of striking already says the direction (all down, or plucked). */
      readonly styled: boolean
      /** Whether it is a stroke in a part that is plucked. */
      readonly brushed: boolean
      readonly marks: readonly Mark[]
      readonly palmMuted: boolean
      readonly rolled: boolean
      readonly slideFrom: SlideFrom | null
      readonly lasting: Lasting | null
      readonly ringing: Ringing | null
      /** A new chord that sounds before the number it belongs to. */
      readonly early: boolean
      /** Whether the hand presses for the first time in the part after it was eased. */
      readonly pressAgain: boolean
      readonly fingers: FingerMoves
    })
  | (Placed & {
      readonly kind: 'unstruck'
      /** Null when everything only goes on: an alternative that begins with a hold. */
      readonly technique: Technique | null
      readonly presses: readonly Press[]
      /** Frets by which all that sounds moves together, null when it does not. */
      readonly together: number | null
      readonly stops: readonly number[]
      readonly marks: readonly Mark[]
      readonly palmMuted: boolean
      readonly lasting: Lasting | null
      readonly ringing: Ringing | null
    })
  | (Placed & {
      readonly kind: 'scratch'
      readonly strokes: readonly Stroke[]
      readonly styled: boolean
      readonly strings: readonly number[] | null
      readonly marks: readonly Mark[]
      readonly palmMuted: boolean
      readonly silencing: Silencing
      /** Lowest fret of the shape the hand is on its way to, null when it stays. */
      readonly travelTo: number | null
    })
  | (Placed & { readonly kind: 'rest'; readonly silencing: Silencing; readonly wholeBar: boolean })
  /** What goes on at the start of a beat: a sound or a silence from before; `to` is its last count. */
  | (Told & {
      readonly kind: 'over'
      readonly sound: 'strike' | 'scratch' | 'rest'
      readonly name: string | null
      readonly to: CountName
      readonly fromBarBefore: boolean
      /** Whether the strumming hand swings past meanwhile. */
      readonly swings: boolean
      /** Whether it fills the bar to its end. */
      readonly wholeBar: boolean
    })
  /** Beats that are played again: from `beat` to `through`, which is the same for one. */
  | (Told & { readonly kind: 'as-beat'; readonly beat: number; readonly through: number })
  | (Told & { readonly kind: 'remark'; readonly text: string })

/** What is said of a beat, or of beats that a sound or a cut joins. */
export interface Item {
  /** `shapes` describes what a bar told by another plays in place of its shapes. */
  readonly kind: 'beat' | 'or' | 'remark' | 'shapes'
  /** Beats as counted. */
  readonly from: number
  readonly to: number
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly instructions: readonly Instruction[]
}
