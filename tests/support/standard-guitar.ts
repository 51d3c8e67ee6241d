import type { Instrument } from '@barwise/parser'

/** A guitar in standard tuning, without a capo: what a lesson that sets nothing is for. */
export const GUITAR: Instrument = {
  name: 'guitar',
  tuning: [64, 59, 55, 50, 45, 40],
  stringNames: ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'],
  retuned: false,
  capo: 0,
  scaleMm: 648,
  highestFret: 22,
  writtenAbove: 12,
  clef: 'treble-8',
}
