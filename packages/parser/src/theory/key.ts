import type { Key, Letter, Mode } from '../score/pitch.ts'
import { formatNoteName, LETTERS, type NoteName, parseNoteName, pitchClassOf } from './note-name.ts'

/** The letters in the order sharps join a signature; flats join from the other end. */
const SHARP_ORDER: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B']

/**
 * Reads a key as it stands in a lesson: a tonic and `major` or `minor`. Null when it is none, or when its signature
 * would need more than seven sharps or flats.
 *
 * @example parseKey('E minor') // { tonic: 'E', mode: 'minor', fifths: 1 }
 * @example parseKey('G# major') // null: eight sharps
 */
export function parseKey(text: string): Key | null {
  const match = /^\s*(\S+)\s+(major|minor)\s*$/u.exec(text)
  const tonic = parseNoteName(match?.[1] ?? '')
  if (tonic === null) return null
  const mode: Mode = match?.[2] === 'minor' ? 'minor' : 'major'
  const fifths = SHARP_ORDER.indexOf(tonic.letter) - 1 + 7 * tonic.alter - (mode === 'minor' ? 3 : 0)
  return Math.abs(fifths) > 7 ? null : { tonic: formatNoteName(tonic), mode, fifths }
}

/** Writes a key as a lesson does, as in `formatKey(key)` = `E minor`. */
export function formatKey(key: Key): string {
  return `${key.tonic} ${key.mode}`
}

/** Whether a key is on the side of the sharps; C major and A minor count as such. */
export function isSharpKey(key: Key): boolean {
  return key.fifths >= 0
}

/**
 * The letters a signature raises or lowers, in the order they are written.
 *
 * @example signatureOf(2) // [{ letter: 'F', alter: 1 }, { letter: 'C', alter: 1 }]
 * @example signatureOf(-1) // [{ letter: 'B', alter: -1 }]
 */
export function signatureOf(fifths: number): readonly NoteName[] {
  return fifths >= 0
    ? SHARP_ORDER.slice(0, fifths).map((letter) => ({ letter, alter: 1 }))
    : SHARP_ORDER.slice(fifths)
        .reverse()
        .map((letter) => ({ letter, alter: -1 }))
}

/**
 * The seven degrees of a key from its tonic up; natural minor in minor keys.
 *
 * @example scaleOf({ tonic: 'E', mode: 'minor', fifths: 1 }).map(formatNoteName) // E F# G A B C D
 */
export function scaleOf(key: Key): readonly NoteName[] {
  const altered = new Map(signatureOf(key.fifths).map((note) => [note.letter, note.alter]))
  const first = LETTERS.indexOf((key.tonic[0] ?? 'C') as Letter)
  return LETTERS.map((_, step) => {
    const letter = LETTERS[(first + step) % 7] ?? 'C'
    return { letter, alter: altered.get(letter) ?? 0 }
  })
}

/** Whether a note is a degree of the key (natural minor in minor keys), by sound. */
export function isDegreeOf(note: NoteName, key: Key): boolean {
  return scaleOf(key).some((degree) => pitchClassOf(degree) === pitchClassOf(note))
}
