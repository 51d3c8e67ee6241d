/** The seven letters of the staff. */
export type Letter = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G'

/** A pitch with its spelling. `octave` is that of scientific pitch notation: C4 is middle C; it changes at C, by letter. */
export interface SpelledPitch {
  readonly letter: Letter
  /** Sharps above 0, flats below: 1 is a sharp, -2 a double flat. */
  readonly alter: -2 | -1 | 0 | 1 | 2
  readonly octave: number
}

export type Mode = 'major' | 'minor'

/** A key: tonic as written (`F#`, `Bb`), mode, and its signature in fifths (sharps above 0, flats below, -7 to 7). */
export interface Key {
  readonly tonic: string
  readonly mode: Mode
  readonly fifths: number
}
