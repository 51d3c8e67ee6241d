import type { FaceId } from '../fonts/face.ts'

/** Colour by meaning. `paper` is white on a black block; `quiet` is grey on screen and may print lighter; nothing depends on it. */
export type Ink = 'ink' | 'paper' | 'quiet' | 'accent'

/** Path commands in `Path.data`: each is followed by its coordinates (x y; x y; x1 y1 x2 y2 x y; none). */
export const MOVE = 0
export const LINE = 1
export const CURVE = 2
export const CLOSE = 3

/** What an item is, for tests of the page's geometry, for styling, and for lighting up what sounds. */
export type Role =
  | 'staff-line'
  | 'tab-line'
  | 'ledger-line'
  | 'bar-line'
  | 'repeat-dot'
  | 'system-line'
  | 'clef'
  | 'key-signature'
  | 'time-signature'
  | 'head'
  | 'scratch-head'
  | 'stem'
  | 'flag'
  | 'beam'
  | 'dot'
  | 'accidental'
  | 'rest'
  | 'tie'
  | 'slur'
  | 'slide'
  | 'articulation'
  | 'tuplet'
  | 'bracket'
  | 'roll'
  | 'vibrato'
  | 'tab-figure'
  | 'tab-scratch'
  | 'tab-label'
  | 'chord-symbol'
  | 'bar-number'
  | 'section'
  | 'tempo'
  | 'ending'
  | 'stroke-sign'
  | 'count'
  | 'let-ring'
  | 'palm-mute'
  | 'finger'
  | 'strip-block'
  | 'strip-floor'
  | 'strip-word'
  | 'strip-frame'
  | 'grid-line'
  | 'grid-nut'
  | 'grid-dot'
  | 'grid-barre'
  | 'grid-figure'
  | 'grid-sign'
  | 'grid-label'
  | 'rule'
  | 'text'

/** A filled or stroked outline. Lengths are points, y grows downward. */
export interface Path {
  readonly kind: 'path'
  readonly role: Role
  readonly data: readonly number[]
  readonly paint: 'fill' | 'stroke'
  /** Width of the line in points; 0 when filled. */
  readonly lineWidth: number
  /** Lengths of dash and gap in points; empty for a whole line. */
  readonly dash: readonly number[]
  readonly ink: Ink
}

/** A run of characters of one face, set on its base line from the left edge, without kerning when `face` is a music face. */
export interface GlyphRun {
  readonly kind: 'glyphs'
  readonly role: Role
  readonly face: FaceId
  /** Size of the em in points. */
  readonly size: number
  readonly text: string
  readonly x: number
  readonly y: number
  readonly ink: Ink
}

/** Items that belong to one bar, or to one event of it; outputs mark them so that they can be found and lit. */
export interface DrawnGroup {
  readonly kind: 'group'
  readonly name: 'bar' | 'slot'
  readonly bar: number
  /** Ticks from the start of the bar at which the event begins (negative when held in from the bar before); null for a bar. */
  readonly at: number | null
  /** The string each tab figure or head belongs to is told by `string` where it matters. */
  readonly items: readonly DrawnItem[]
}

export type DrawnItem = Path | GlyphRun | DrawnGroup

/** A finished drawing: what it holds goes unchanged to every output. The origin is its top left corner. */
export interface Drawing {
  readonly kind: 'drawing'
  /** Points. */
  readonly width: number
  readonly height: number
  readonly items: readonly DrawnItem[]
}
