import type { Finger, Shape } from '@barwise/parser'

/** What one string of a grip does: its fret (0 open, null silent) and the finger on it, where one is known. */
export interface GripString {
  readonly string: number
  readonly fret: number | null
  readonly finger: Finger | null
}

/** A grip string by string, from the one next to the thumb: how it is read aloud. */
export function gripStrings(shape: Shape): readonly GripString[] {
  return shape.frets.map((fret, index) => ({ string: index + 1, fret, finger: shape.fingers[index] ?? null })).reverse()
}
