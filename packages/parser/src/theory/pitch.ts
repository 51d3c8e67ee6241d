import type { Letter, SpelledPitch } from '../score/pitch.ts'
import { formatNoteName, parseNoteName, semitonesOfLetter } from './note-name.ts'

/**
 * The MIDI number of a pitch in scientific notation (C4 = 60, A4 = 69). The octave belongs to the letter.
 *
 * @example midiOf({ letter: 'C', alter: -1, octave: 4 }) // 59, the B below middle C
 * @example midiOf({ letter: 'B', alter: 1, octave: 3 }) // 60, middle C
 */
export function midiOf(pitch: SpelledPitch): number {
  return (pitch.octave + 1) * 12 + semitonesOfLetter(pitch.letter) + pitch.alter
}

/**
 * Reads scientific pitch notation; null when the text is none.
 *
 * @example parsePitch('C#5') // { letter: 'C', alter: 1, octave: 5 }
 * @example parsePitch('H2') // null
 */
export function parsePitch(text: string): SpelledPitch | null {
  const match = /^([^\d-]+)(-?\d{1,2})$/u.exec(text)
  const note = parseNoteName(match?.[1] ?? '')
  return note === null ? null : { ...note, octave: Number(match?.[2]) }
}

/** Writes scientific pitch notation, as in `formatPitch({ letter: 'B', alter: -1, octave: 3 })` = `Bb3`. */
export function formatPitch(pitch: SpelledPitch): string {
  return formatNoteName(pitch) + pitch.octave
}

/**
 * The pitch with this MIDI number that is written with the given letter and signs; the octave follows the letter.
 *
 * @example pitchNamed(60, { letter: 'B', alter: 1 }) // { letter: 'B', alter: 1, octave: 3 }
 * @throws when the note name does not sound as that MIDI number in any octave: a fault of the program.
 */
export function pitchNamed(midi: number, note: { letter: Letter; alter: SpelledPitch['alter'] }): SpelledPitch {
  const octave = (midi - semitonesOfLetter(note.letter) - note.alter) / 12 - 1
  if (!Number.isInteger(octave)) throw new Error(`${formatNoteName(note)} is not MIDI ${midi} in any octave`)
  return { letter: note.letter, alter: note.alter, octave }
}

/** The frequency of a MIDI number in hertz: equal temperament, A4 = 440 Hz, as in `frequencyHz(69)` = 440. */
export function frequencyHz(midi: number): number {
  return 440 * 2 ** ((midi - 69) / 12)
}
