import type { Instrument, Key, Letter } from '@barwise/parser'

/** A written pitch as the staff needs it. */
export interface StaffPitch {
  readonly letter: Letter
  /** Sharps above 0, flats below. */
  readonly alter: -2 | -1 | 0 | 1 | 2
  /** Letters counted from C0: the place on the staff whatever the accidental. */
  readonly diatonic: number
}

const LETTERS = 'CDEFGAB'
const ALTERS: Readonly<Record<string, -2 | -1 | 0 | 1 | 2>> = { '': 0, '#': 1, '##': 2, x: 2, b: -1, bb: -2 }

/** Reads scientific pitch notation, as in `staffPitch('C#5')` = C, 1, 35. Throws on anything else (our bug: the reader wrote it). */
export function staffPitch(written: string): StaffPitch {
  const match = /^([A-G])(##|#|x|bb|b)?(-?\d+)$/.exec(written)
  const letter = match?.[1] as Letter | undefined
  if (match === null || letter === undefined) throw new Error(`no written pitch: ${written}`)
  const alter = ALTERS[match[2] ?? ''] ?? 0
  return { letter, alter, diatonic: Number(match[3]) * 7 + LETTERS.indexOf(letter) }
}

/** The height of a written pitch in staff spaces below the top line: F5 is 0 in the treble clef, A3 in the bass clef. */
export function staffY(diatonic: number, clef: Instrument['clef']): number {
  const topLine = clef === 'bass-8' ? 26 : 38
  return (topLine - diatonic) / 2
}

const SHARPS = 'FCGDAEB'

/** What a key signature does to a letter: 1 for F in G major, -1 for B in F major, else 0. */
export function keyAlter(key: Key, letter: Letter): -1 | 0 | 1 {
  if (key.fifths > 0) return SHARPS.slice(0, key.fifths).includes(letter) ? 1 : 0
  if (key.fifths < 0) return SHARPS.slice(7 + key.fifths).includes(letter) ? -1 : 0
  return 0
}
