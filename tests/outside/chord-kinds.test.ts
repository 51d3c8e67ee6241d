import { createRequire } from 'node:module'
import { readLesson } from '@barwise/parser'
import { partMusicXml } from '@barwise/render'
import { parse } from 'musicxml-io'
import { expect, it } from 'vitest'

interface Parsed {
  readonly error?: unknown
  readonly normalized?: { readonly semitones: readonly number[]; readonly bassNote: string; readonly rootNote: string }
}
// Source: chord-symbol 4.0.0 (MIT), semitones above the root. Its `main` cannot be imported by Node, the built file can.
const { chordParserFactory } = createRequire(import.meta.url)('chord-symbol/lib/chord-symbol.js') as {
  chordParserFactory: () => (symbol: string) => Parsed
}
const parseSymbol = chordParserFactory()

// Source: MusicXML 4.0, kind-value, in semitones above the root.
const KINDS: Readonly<Record<string, readonly number[]>> = {
  major: [0, 4, 7],
  minor: [0, 3, 7],
  augmented: [0, 4, 8],
  diminished: [0, 3, 6],
  dominant: [0, 4, 7, 10],
  'major-seventh': [0, 4, 7, 11],
  'minor-seventh': [0, 3, 7, 10],
  'diminished-seventh': [0, 3, 6, 9],
  'augmented-seventh': [0, 4, 8, 10],
  'half-diminished': [0, 3, 6, 10],
  'major-minor': [0, 3, 7, 11],
  'major-sixth': [0, 4, 7, 9],
  'minor-sixth': [0, 3, 7, 9],
  'dominant-ninth': [0, 4, 7, 10, 14],
  'major-ninth': [0, 4, 7, 11, 14],
  'minor-ninth': [0, 3, 7, 10, 14],
  'dominant-11th': [0, 4, 7, 10, 14, 17],
  'minor-11th': [0, 3, 7, 10, 14, 17],
  'suspended-second': [0, 2, 7],
  'suspended-fourth': [0, 5, 7],
  power: [0, 7],
}
/** Degrees above a dominant chord, which added ones are reckoned from. Source: MusicXML 4.0, degree-alter. */
const DOMINANT: Readonly<Record<number, number>> = { 2: 2, 4: 5, 5: 7, 6: 9, 7: 10, 9: 14, 11: 17, 13: 21 }
const SYMBOLS =
  'C Am F#dim Bbaug G7 Cmaj7 Dm7 Bdim7 E7#5 F#m7b5 Fm(maj7) C6 Am6 A9 Cmaj9 Em9 Em11 Dsus2 Dsus4 E5 C7b9 C7#9 A7sus4 Cadd9 C69 G7b5 C9#11 Ebmaj7#11 Bbm7/Ab D/F# Cmadd9 G7#11 Dm7b5 C7b5 Fmaj7#5 A9sus4'.split(
    ' ',
  )

it.each(SYMBOLS)('%s has the same tones by its kind and degrees as by another reader of symbols', (symbol) => {
  const text = `---\ntitle: Tag\n---\n\n:::part{#tag grid=4 time=2/4}\nbar 1 chords ${symbol}\n  1: 0@6\n  2: -\n:::\n`
  const { lesson } = readLesson({ path: 'tag.md', text })
  const { measures } = parse(partMusicXml(lesson, lesson.parts[0]!)).parts[0]!
  const harmony = measures[0]!.entries.find((entry) => entry.type === 'harmony')!
  if (harmony.type !== 'harmony') throw new Error('no harmony')
  const kind = KINDS[harmony.kind]!
  const tones = new Set(kind)
  for (const { degreeValue, degreeAlter = 0, degreeType } of harmony.degrees ?? []) {
    const above = DOMINANT[degreeValue]!
    const own = kind.find((tone) => Math.abs(tone - above) <= 1)!
    if (degreeType === 'add') tones.add(above + degreeAlter)
    else tones.delete(own)
    if (degreeType === 'alter') tones.add(own + degreeAlter)
  }
  const other = parseSymbol(symbol).normalized!
  const classes = (semitones: Iterable<number>) =>
    [...new Set([...semitones].map((tone) => tone % 12))].sort((a, b) => a - b)
  expect(classes(tones)).toEqual(classes(other.semitones))
  const sign = (alter: number | undefined) => (alter === 1 ? '#' : alter === -1 ? 'b' : '')
  expect(harmony.root.rootStep + sign(harmony.root.rootAlter)).toBe(other.rootNote)
  if (harmony.bass !== undefined) expect(harmony.bass.bassStep + sign(harmony.bass.bassAlter)).toBe(other.bassNote)
})
