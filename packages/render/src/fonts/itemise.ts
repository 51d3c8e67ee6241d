import type { FaceId } from './face.ts'

/** Characters that stand together in one face. `scale` multiplies the size of the words around, so that signs fit among letters. */
export interface FaceRun {
  readonly face: FaceId
  readonly text: string
  readonly scale: number
}

/** A text cut into runs, and the characters that no face holds, each once in the order met; they are left out of the runs. */
export interface Itemised {
  readonly runs: readonly FaceRun[]
  readonly missing: readonly string[]
}

/** What itemising asks of the faces. `capHeight` is in ems. */
export interface FaceCoverage {
  has(face: FaceId, codePoint: number): boolean
  capHeight(face: FaceId): number
}

/**
 * Signs of Unicode that the music face holds in a form made to stand among words: double accidentals of chord symbols and
 * note values of tempo marks. Source: SMuFL 1.4, ranges "Chord symbols" and "Metronome marks"; U+1D15E and its like
 * fall apart into head and stem under NFC (Unicode composition exclusions), so they are matched in that form.
 */
const SIGNS: readonly (readonly [string, string])[] = [
  ['\u{1D158}\u{1D165}\u{1D16E}', '\uECA7'],
  ['\u{1D157}\u{1D165}', '\uECA3'],
  ['\u{1D158}\u{1D165}', '\uECA5'],
  ['\u{1D12A}', '\uED63'],
  ['\u{1D12B}', '\uED64'],
  ['\u2669', '\uECA5'],
  ['\u266A', '\uECA7'],
  ['\u{1D16D}', '\uECB7'],
]

/** Height in ems of a note value (SMuFL metronome mark) and of a chord-symbol accidental in the music face. */
const NOTE_VALUE_HEIGHT = 0.83
const ACCIDENTAL_HEIGHT = 0.75
const FIRST_PRIVATE = 0xe000
const LAST_PRIVATE = 0xf8ff

/**
 * Cuts a text, composed to NFC, into runs: the face asked for, else accidentals from `music-text`, signs of notation from
 * `music`, other signs from `symbols`, and what only the plain sans or the code face holds from there.
 */
export function itemiseText(face: FaceId, text: string, faces: FaceCoverage): Itemised {
  let composed = text.normalize('NFC')
  if (face !== 'music') for (const [written, sign] of SIGNS) composed = composed.replaceAll(written, sign)
  const runs: { face: FaceId; text: string; scale: number }[] = []
  const missing = new Set<string>()
  for (const character of composed) {
    const codePoint = character.codePointAt(0) ?? 0
    const found = faceFor(face, codePoint, faces)
    if (found === null) {
      missing.add(character)
      continue
    }
    const scale = scaleFor(face, found, codePoint, faces)
    const last = runs.at(-1)
    if (last !== undefined && last.face === found && last.scale === scale) last.text += character
    else runs.push({ face: found, text: character, scale })
  }
  return { runs, missing: [...missing] }
}

function faceFor(face: FaceId, codePoint: number, faces: FaceCoverage): FaceId | null {
  const chain: readonly FaceId[] = [face, 'music-text', 'music', 'symbols', 'sans', 'mono']
  return chain.find((candidate) => faces.has(candidate, codePoint)) ?? null
}

function scaleFor(base: FaceId, found: FaceId, codePoint: number, faces: FaceCoverage): number {
  if (found === base) return 1
  const cap = faces.capHeight(base)
  if (found === 'music-text') return round(cap / faces.capHeight('music-text'))
  if (found !== 'music') return 1
  if (codePoint >= FIRST_PRIVATE && codePoint <= LAST_PRIVATE) {
    return codePoint < 0xed00 ? round((1.3 * cap) / NOTE_VALUE_HEIGHT) : round((1.1 * cap) / ACCIDENTAL_HEIGHT)
  }
  return 1
}

function round(scale: number): number {
  return Math.round(scale * 1000) / 1000
}
