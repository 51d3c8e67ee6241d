import type { Key } from '../score/pitch.ts'
import { readRecipe, type Stack } from './chord-recipe.ts'
import { type ChordTone, toneAbove } from './chord-tone.ts'
import { isSharpKey, scaleOf } from './key.ts'
import { formatNoteName, type NoteName, nameOnSide, parseNoteName, pitchClass, pitchClassOf } from './note-name.ts'

/** A chord symbol as read: its root, its tones by degree, its slash bass. Plain data. */
export interface ChordSymbol {
  readonly kind: 'chord-symbol'
  /** The symbol with plain signs (`#`, `b`, `-`), otherwise as written. */
  readonly text: string
  readonly root: NoteName
  /** Root first, then by degree; the slash bass is not among them unless it is a tone of the chord. */
  readonly tones: readonly ChordTone[]
  readonly bass: NoteName | null
  readonly stack: Stack
  readonly altered: boolean
  readonly display: ChordDisplay
}

/** A symbol cut into the pieces that are typeset differently. Accidentals are the signs `♯` and `♭`, or empty. */
export interface ChordDisplay {
  readonly root: string
  readonly accidental: string
  /** Minor, diminished, augmented: on the line, full size, as in `m`, `dim`, `+`. */
  readonly onLine: string
  /** The rest: raised and smaller, as in `maj7`, `7(♭9)`, `sus4`. */
  readonly raised: string
  readonly bass: { readonly root: string; readonly accidental: string } | null
}

/** Degree sign, slashed o and triangle in the forms that keyboards and word processors give. */
const PLAIN_SIGNS: Readonly<Record<string, string>> = {
  '♯': '#',
  '♭': 'b',
  '𝄪': '##',
  '𝄫': 'bb',
  '−': '-',
  '–': '-',
  '∆': 'Δ',
  '△': 'Δ',
  º: '°',
  '˚': '°',
  Ø: 'ø',
}

/**
 * Reads a chord symbol; null when the text is none. Common practice in all its usual spellings: `m` `min` `mi` `-`,
 * `maj` `M` `Δ`, `dim` `°`, `ø`, `aug` `+`, `6` `69` `6/9`, `7` `9` `11` `13`, `sus` `sus2` `sus4`, `add9`, `no3`, `omit5`,
 * `b5` `#5` `b9` `#9` `#11` `b13` `alt`, brackets, a slash bass. A single sign after the root belongs to the root:
 * `Cb5` is the power chord on C flat; the flat fifth on C is `C(b5)`.
 *
 * @example parseChordSymbol('A9')?.tones.map((tone) => formatNoteName(tone.note)) // A C# E G B
 * @example parseChordSymbol('C7#9')?.tones.at(-1)?.note // D#
 * @example parseChordSymbol('D/F#')?.bass // F#
 * @example parseChordSymbol('Dance') // null
 */
export function parseChordSymbol(text: string): ChordSymbol | null {
  const plain = text.replace(/[♯♭𝄪𝄫−–∆△º˚Ø]/gu, (sign) => PLAIN_SIGNS[sign] ?? sign)
  for (const pattern of [/^([A-G][#b]?)(.*)$/, /^([A-G](?:##|bb))(.*)$/]) {
    const match = pattern.exec(plain)
    const root = parseNoteName(match?.[1] ?? '')
    const slash = /^(.*)\/([A-G](?:##|#|bb|b)?)$/.exec(match?.[2] ?? '')
    const recipe = root === null ? null : readRecipe(slash?.[1] ?? match?.[2] ?? '')
    if (root === null || recipe === null) continue
    const bass = parseNoteName(slash?.[2] ?? '')
    return {
      kind: 'chord-symbol',
      text: plain,
      root,
      tones: recipe.tones.map((name) => toneAbove(root, name)),
      bass,
      stack: recipe.stack,
      altered: recipe.altered,
      display: {
        root: root.letter,
        accidental: signsOf(root),
        onLine: recipe.onLine,
        raised: prettyFigures(recipe.raised),
        bass: bass === null ? null : { root: bass.letter, accidental: signsOf(bass) },
      },
    }
  }
  return null
}

/** The names of a chord's tones, root first, then by degree, as in `A C# E G B` for A9. */
export function toneNames(chord: ChordSymbol): readonly string[] {
  return chord.tones.map((tone) => formatNoteName(tone.note))
}

/**
 * The symbol of a chord moved along the neck: its new root is a degree of the key by that degree's name, else it is named
 * by the side of the key; the bass keeps its distance to the root.
 *
 * @example moveChord(A9, -1, eMinor).text // 'G#9'; in F major 'Ab9'
 */
export function moveChord(chord: ChordSymbol, semitones: number, key: Key): ChordSymbol {
  if (semitones === 0) return chord
  const sharps = isSharpKey(key)
  const root = nameInKey(pitchClassOf(chord.root) + semitones, key)
  const rest = chord.text.slice(formatNoteName(chord.root).length).replace(/\/[A-G][#b]*$/, '')
  const bass = chord.bass === null ? '' : `/${formatNoteName(movedBass(chord, chord.bass, root, semitones, sharps))}`
  return parseChordSymbol(formatNoteName(root) + rest + bass) ?? chord
}

function movedBass(chord: ChordSymbol, bass: NoteName, root: NoteName, semitones: number, sharps: boolean): NoteName {
  const moved = pitchClass(pitchClassOf(bass) + semitones)
  const tone = chord.tones.find((candidate) => pitchClassOf(candidate.note) === pitchClassOf(bass))
  return tone === undefined ? nameOnSide(moved, sharps) : toneAbove(root, tone.name).note
}

function nameInKey(semitones: number, key: Key): NoteName {
  const degree = scaleOf(key).find((note) => pitchClassOf(note) === pitchClass(semitones))
  return degree ?? nameOnSide(semitones, isSharpKey(key))
}

function signsOf(note: NoteName): string {
  return note.alter < 0 ? '♭'.repeat(-note.alter) : '♯'.repeat(note.alter)
}

function prettyFigures(text: string): string {
  return text.replace(/b(?=\d)/g, '♭').replace(/#(?=\d)/g, '♯')
}
