import type { Fingering, Grip } from './grip.ts'

/** Where the hand is, as the fret its index finger is at or over; not a number when nothing is pressed. */
export function positionOf(grip: Grip, fingering: Fingering): number {
  const places = fingering.flatMap((finger, at) => {
    const fret = grip.presses[at]?.fret
    return finger === 'T' || fret === undefined ? [] : [fret - (finger - 1)]
  })
  return places.length === 0 ? Number.NaN : places.reduce((sum, place) => sum + place, 0) / places.length
}
