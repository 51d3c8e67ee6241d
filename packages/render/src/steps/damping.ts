import { type Finger, gripOf, type Instrument, type Shape, silentStrings } from '@barwise/parser'

/** Which finger keeps which string quiet: for each silent string, the finger. */
export type Damping = ReadonlyMap<number, Finger>

/**
 * The fingers that damp the silent strings a stroke is likely to meet: those between sounding strings and those next to them.
 * Null when fingers are not known. Damping by neighbouring fingers is common practice.
 */
export function dampingOf(shape: Shape, instrument: Instrument): Damping | null {
  const strings = shape.frets.map((fret, i) => ({ string: i + 1, fret, finger: shape.fingers[i] ?? null }))
  const grip = gripOf(strings)
  const fingering = grip.presses.flatMap((press) => press.finger ?? [])
  if (fingering.length < grip.presses.length) return null
  const sounding = (string: number): boolean => (shape.frets[string - 1] ?? null) !== null
  const damping = new Map<number, Finger>()
  for (const { string, inside, by } of silentStrings(instrument.tuning.length, grip, fingering)) {
    const near = inside || sounding(string - 1) || sounding(string + 1)
    if (near && by !== null && by.kind !== 'thumb') damping.set(string, by.finger)
  }
  return damping
}
