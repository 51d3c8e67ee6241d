import type { Instrument, InstrumentName } from '../score/instrument.ts'

/** The neck as a hand meets it: frets are counted from the capo, distances are measured from the real nut. */
export interface Neck {
  readonly scaleMm: number
  readonly capo: number
  readonly strings: number
  /** Distance between the middles of neighbouring strings at the nut and at the bridge. */
  readonly spacingMm: { readonly nut: number; readonly bridge: number }
}

/** Distances between neighbouring strings at nut and bridge; common practice of makers, no single source. */
const SPACING_MM: Readonly<Record<InstrumentName, Neck['spacingMm']>> = {
  guitar: { nut: 7.1, bridge: 10.5 },
  bass: { nut: 10, bridge: 19 },
  ukulele: { nut: 9, bridge: 12.5 },
}

/** The neck of an instrument. */
export function neckOf(instrument: Instrument): Neck {
  return {
    scaleMm: instrument.scaleMm,
    capo: instrument.capo,
    strings: instrument.tuning.length,
    spacingMm: SPACING_MM[instrument.name],
  }
}

/**
 * Distance in millimetres from the nut to a fret of an open string of length `scaleMm`, L(1 - 2^(-n/12)): equal temperament.
 *
 * @example fretFromNutMm(648, 12) // 324
 */
export function fretFromNutMm(scaleMm: number, fret: number): number {
  return scaleMm * (1 - 2 ** (-fret / 12))
}

/** Where in a fret space a fingertip sits, from the fret before to the fret itself: common practice. */
const TIP_IN_SPACE = 0.75

/** Millimetres from the nut to a fingertip that presses `fret` (1 or more, counted from the capo). */
export function tipMm(neck: Neck, fret: number): number {
  const behind = fretFromNutMm(neck.scaleMm, neck.capo + fret - 1)
  const at = fretFromNutMm(neck.scaleMm, neck.capo + fret)
  return behind + TIP_IN_SPACE * (at - behind)
}

/** Millimetres between two neighbouring strings at a distance from the nut. */
function stringSpacingMm(neck: Neck, fromNutMm: number): number {
  const { nut, bridge } = neck.spacingMm
  return nut + ((bridge - nut) * fromNutMm) / neck.scaleMm
}

/** A place on the neck where a fingertip presses. */
export interface NeckPlace {
  readonly string: number
  readonly fret: number
}

/** Millimetres a fingertip travels between two places, along and across the strings. */
export function travelMm(neck: Neck, from: NeckPlace, to: NeckPlace): number {
  const a = tipMm(neck, from.fret)
  const b = tipMm(neck, to.fret)
  const across = (to.string - from.string) * stringSpacingMm(neck, (a + b) / 2)
  return Math.hypot(b - a, across)
}
