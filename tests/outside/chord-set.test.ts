import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { parseChordSymbol } from '../../packages/parser/src/theory/chord-symbol.ts'
import { fingeredMidis, harmonyOf, judgeHarmony } from '../../packages/parser/src/theory/judge-harmony.ts'
import { pitchClass, pitchClassOf } from '../../packages/parser/src/theory/note-name.ts'
import { readChordSet, readWrongTones } from '../support/chord-set.ts'
import { GUITAR } from '../support/standard-guitar.ts'

// Source of every shape: @tombatossals/chords-db 0.5.1 (MIT).
const shapes = readChordSet()
const wrong = readWrongTones()

const DISAGREE = ['contradicts', 'extra tones', 'missing tones']

describe('published shapes', () => {
  it('sound the published MIDI numbers on our strings, every one', () => {
    expect(shapes).toHaveLength(2069)
    for (const shape of shapes) {
      const ours = fingeredMidis({ frets: [...shape.frets].reverse() }, GUITAR)
      expect([...ours].reverse(), shape.id).toEqual(shape.midi)
    }
  })

  it('agree with their symbols, save two that lack a tone and the 29 that are wrong', () => {
    const counts = new Map<string, number>()
    let agreeing = 0
    for (const shape of shapes) {
      const harmony = harmonyOf({ label: shape.symbol, frets: [...shape.frets].reverse() }, GUITAR)!
      const disagrees = DISAGREE.includes(harmony.verdict)
      const known = wrong.has(shape.id)
      if (shape.id === 'C/9#1' || shape.id === 'C/9#4') expect(harmony.verdict).toBe('missing tones')
      else expect(disagrees, `${shape.id} ${harmony.verdict}`).toBe(known)
      if (!disagrees && shape.suffix !== '7sg') agreeing += 1
      const row = known ? `known wrong, ${harmony.verdict}` : harmony.verdict
      counts.set(row, (counts.get(row) ?? 0) + 1)
    }
    console.log(`verdicts on ${shapes.length} published shapes: ${JSON.stringify(Object.fromEntries(counts))}`)
    expect(wrong.size).toBe(29)
    expect(agreeing).toBe(2035)
  })

  it('have the lowest note their slash names, where they are not known to be wrong', () => {
    for (const shape of shapes) {
      const chord = parseChordSymbol(shape.symbol)!
      if (chord.bass === null || wrong.has(shape.id)) continue
      const lowest = pitchClass(Math.min(...shape.midi))
      const verdict = judgeHarmony(shape.midi, chord)!.bass
      expect(verdict, shape.id).toBe(lowest === pitchClassOf(chord.bass) ? 'slash agrees' : 'slash wrong')
    }
  })
})

interface SecondOpinion {
  readonly normalized: { readonly semitones: readonly number[] }
  readonly error?: readonly unknown[]
}

/** chord-symbol 4.0.0 (MIT): its `main` does not load in Node, its built file does. */
const { chordParserFactory } = createRequire(import.meta.url)('chord-symbol/lib/chord-symbol.js') as {
  chordParserFactory: () => (text: string) => SecondOpinion
}

/** Convention, not fact: it leaves the third out of 11 and maj11 and the eleventh out of 13 and maj13. */
const OTHER_CONVENTION = /^(?:maj)?1[13]$/

/** Likewise convention: tones that we may miss and it does not list, the eleventh of a thirteenth and the fifth beside a flat thirteenth. */
const LEFT_OUT: Readonly<Record<string, readonly number[]>> = { '13b9': [17], '7b13': [7] }

describe('tones of chord symbols', () => {
  const parse = chordParserFactory()

  it('are those of a second reader for every symbol of the set', () => {
    const symbols = [...new Set(shapes.map((shape) => shape.symbol))]
    let compared = 0
    for (const symbol of symbols) {
      const chord = parseChordSymbol(symbol)!
      if (OTHER_CONVENTION.test(symbol.replace(/^[A-G][#b]?/, ''))) continue
      const theirs = parse(symbol)
      expect(theirs.error, symbol).toBeUndefined()
      const bare = theirs.normalized.semitones.map(pitchClass)
      expect(new Set(chord.tones.map((tone) => tone.semitones)), symbol).toEqual(new Set(bare))
      compared += 1
    }
    console.log(`chord symbols compared with chord-symbol 4.0.0: ${compared} of ${symbols.length}`)
  })

  it('are those of a second reader for spellings a writer uses', () => {
    const suffixes = (
      'M maj min mi - dim ° aug + (b5) 5 no3 omit3 sus sus4 sus2 6 m6 69 6/9 maj7 M7 Δ Δ7 m7 -7 min7 mM7 m(maj7) -maj7 m7b5 ' +
      'ø ø7 dim7 o7 °maj7 +7 7#5 7+ maj7#5 7b5 7sus 7sus4 7sus2 add9 (add9) 2 4 madd9 add11 9 maj9 m9 mM9 7b9 7#9 7(b9,#9) 9b5 9#5 ' +
      '9#11 maj7#11 m11 13b9 7b13 m7#5 7#5#9 7no3 add#11'
    ).split(' ')
    for (const suffix of suffixes) {
      const ours = parseChordSymbol(`G${suffix}`)
      const theirs = parse(`G${suffix}`)
      expect(ours, suffix).not.toBeNull()
      expect(theirs.error, suffix).toBeUndefined()
      const leftOut = LEFT_OUT[suffix] ?? []
      expect(new Set(ours!.tones.map((tone) => tone.semitones)), suffix).toEqual(
        new Set([...theirs.normalized.semitones, ...leftOut].map(pitchClass)),
      )
    }
  })
})
