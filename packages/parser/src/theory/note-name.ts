import type { Letter } from '../score/pitch.ts'

/** A note without its octave. `alter` is in semitones: 1 is a sharp, -1 a flat, 2 and -2 the double ones. */
export interface NoteName {
  readonly letter: Letter
  readonly alter: -2 | -1 | 0 | 1 | 2
}

/** The letters of the staff from C upward, the order in which octaves count. */
export const LETTERS: readonly Letter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B']

const SEMITONES: Readonly<Record<Letter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }

const SHARP_SIDE: readonly string[] = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B']
const FLAT_SIDE: readonly string[] = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B']

/** Semitones from C up to the natural letter, as in `semitonesOfLetter('G')` = 7. */
export function semitonesOfLetter(letter: Letter): number {
  return SEMITONES[letter]
}

/** A number of semitones brought into one octave, as in `pitchClass(-1)` = 11. */
export function pitchClass(semitones: number): number {
  return ((semitones % 12) + 12) % 12
}

/** The pitch class of a note, 0 (C) to 11 (B), as in `pitchClassOf({ letter: 'C', alter: -1 })` = 11. */
export function pitchClassOf(note: NoteName): number {
  return pitchClass(SEMITONES[note.letter] + note.alter)
}

/**
 * Reads a note name; null when the text is none.
 *
 * @example parseNoteName('F#') // { letter: 'F', alter: 1 }
 * @example parseNoteName('B♭') // { letter: 'B', alter: -1 }
 * @example parseNoteName('H') // null
 */
export function parseNoteName(text: string): NoteName | null {
  const match = /^([A-G])(##|#|bb|b|x|♯♯|♯|♭♭|♭)?$/u.exec(text)
  const letter = match?.[1]
  if (letter === undefined) return null
  return { letter: letter as Letter, alter: alterOf(match?.[2] ?? '') }
}

/** Writes a note name with plain signs, as in `formatNoteName({ letter: 'F', alter: 2 })` = `F##`. */
export function formatNoteName(note: NoteName): string {
  return note.letter + (note.alter < 0 ? 'b'.repeat(-note.alter) : '#'.repeat(note.alter))
}

/** The name of a pitch class with at most one sharp (`sharps` true) or one flat, as in `nameOnSide(10, false)` = Bb. */
export function nameOnSide(semitones: number, sharps: boolean): NoteName {
  const text = (sharps ? SHARP_SIDE : FLAT_SIDE)[pitchClass(semitones)] ?? 'C'
  return parseNoteName(text) ?? { letter: 'C', alter: 0 }
}

function alterOf(signs: string): NoteName['alter'] {
  if (signs === 'x' || signs === '##' || signs === '♯♯') return 2
  if (signs === 'bb' || signs === '♭♭') return -2
  if (signs === '#' || signs === '♯') return 1
  return signs === '' ? 0 : -1
}
