/** A note of an event as the generator means it. A null fret is a dead string. */
export interface ModelNote {
  readonly string: number
  readonly fret: number | null
  readonly from: 'struck' | 'hammered' | 'pulled' | 'slid' | 'held' | 'dead'
  readonly fromFret: number | null
  ringsTo: number | null
}

/** An event as the generator means it. Times in ticks, `at` from the start of its bar. */
export interface ModelEvent {
  readonly at: number
  duration: number
  readonly kind: 'strike' | 'scratch' | 'rest'
  readonly stroke: 'down' | 'up' | 'pluck' | null
  readonly strings: readonly number[] | null
  readonly notes: readonly ModelNote[]
  marks: readonly string[]
  readonly palmMuted: boolean
  readonly rolled: boolean
  /** Start of its bar in ticks from the start of bar 1. */
  readonly barStart: number
}

/** A bar as the generator means it. */
export interface ModelBar {
  readonly number: number
  readonly start: number
  readonly length: number
  readonly time: string
  readonly groups: readonly { readonly at: number; readonly length: number; readonly parts: number }[]
  readonly events: readonly ModelEvent[]
  readonly alternatives: readonly {
    readonly at: number
    readonly length: number
    readonly groups: ModelBar['groups']
    readonly events: readonly ModelEvent[]
  }[]
  /** What a hold at its start holds. */
  readonly heldIn: string | null
}

/** A stroke sign as the generator means it. */
export type ModelSign =
  | { readonly kind: 'hold'; readonly text: '-' }
  | { readonly kind: 'rest'; readonly text: '.' | 's:.' }
  | {
      readonly kind: 'scratch'
      readonly text: string
      readonly strings: readonly number[] | null
      readonly direction: 'down' | 'up' | null
      readonly marks: readonly string[]
      readonly palmMuted: boolean
    }
  | {
      readonly kind: 'strike'
      readonly text: string
      readonly shape: string | null
      readonly notes: readonly { readonly string: number; readonly fret: number | null }[]
      readonly technique: 'h' | 'p' | 's' | null
      readonly direction: 'down' | 'up' | null
      readonly marks: readonly string[]
      readonly palmMuted: boolean
      readonly rolled: boolean
    }

/** A sign in its time (ticks from the start of the full bar) with the way the hand swings there. */
export interface ModelPlaced {
  readonly sign: ModelSign
  readonly at: number
  readonly duration: number
  readonly swing: 'down' | 'up'
}

/** Every event that was heard before a moment, oldest first: the model looks back through it instead of keeping a state. */
export type Heard = readonly ModelEvent[]
