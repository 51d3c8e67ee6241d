/** Events as the words of the steps tell them; a sound lasts until the next thing that is told. */

/** Frets by string; null is struck dead. */
export type Frets = ReadonlyMap<number, number | null>

export interface DecodedNote {
  readonly string: number
  readonly fret: number | null
  readonly from: string
  readonly fromFret: number | null
}

/** A shape as it was struck: moved by so many frets, on these strings only (null for all), nothing added. */
export interface Grip {
  readonly shape: string
  readonly shift: number
  readonly only: readonly number[] | null
}

/** What is struck: its frets, and the shape it was told by. */
export interface Target {
  readonly frets: Frets
  readonly grip: Grip | null
}

export interface Decoded {
  at: number
  readonly kind: 'strike' | 'scratch' | 'rest'
  readonly stroke: string | null
  notes: DecodedNote[]
  /** By what shape it was told, null where strings and frets were. */
  readonly grip: Grip | null
  readonly strings: readonly number[] | null
  readonly marks: readonly string[]
  readonly palmMuted: boolean
  readonly rolled: boolean
}

export interface DecodedBar {
  readonly number: number
  readonly length: number
  readonly count: Count
  readonly events: Decoded[]
  readonly alternatives: { readonly at: number; readonly events: Decoded[] }[]
}

/** How a bar is counted and struck. */
export interface Count {
  readonly beats: number
  readonly slots: number
  readonly beatTicks: number
  readonly style: 'down' | 'alternate' | 'pluck'
}

/** A silence at a place. */
export function restAt(at: number): Decoded {
  return {
    at,
    kind: 'rest',
    stroke: null,
    notes: [],
    grip: null,
    strings: null,
    marks: [],
    palmMuted: false,
    rolled: false,
  }
}
