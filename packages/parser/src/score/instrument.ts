export type InstrumentName = 'guitar' | 'bass' | 'ukulele'

/** The instrument of a lesson as it is strung. Strings are listed from string 1, the one nearest the floor, upward. */
export interface Instrument {
  readonly name: InstrumentName
  /** MIDI number of each open string without the capo. */
  readonly tuning: readonly number[]
  /** Each open string in scientific pitch notation at sounding pitch, as in `E4 B3 G3 D3 A2 E2`. */
  readonly stringNames: readonly string[]
  /** Whether the tuning differs from the instrument's standard one. */
  readonly retuned: boolean
  /** Fret of the capo; 0 without one. Frets in a lesson count from it. */
  readonly capo: number
  /** Vibrating length of the open strings in millimetres. */
  readonly scaleMm: number
  /** The highest fret a lesson may name: the instrument's frets less the capo. */
  readonly highestFret: number
  /** Semitones added to a sounding pitch, capo left out, to get the written one: 12 for guitar and bass, 0 for ukulele. */
  readonly writtenAbove: 0 | 12
  /** Clef of the staff: the treble clef with a small 8 below, the bass clef with a small 8 below, or the plain treble clef. */
  readonly clef: 'treble-8' | 'bass-8' | 'treble'
}
