import { describe, expect, it } from 'vitest'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'
import { parseChordSymbol } from '../../src/theory/chord-symbol.ts'
import { harmonyOf, judgeHarmony } from '../../src/theory/judge-harmony.ts'
import { midiOf, parsePitch } from '../../src/theory/pitch.ts'

/** Pitches as text, against a symbol. */
const judge = (pitches: string, symbol: string) =>
  judgeHarmony(
    pitches.split(' ').map((text) => midiOf(parsePitch(text)!)),
    parseChordSymbol(symbol)!,
  )!

const verdict = (pitches: string, symbol: string) => judge(pitches, symbol).verdict
const bass = (pitches: string, symbol: string) => judge(pitches, symbol).bass

describe('verdicts', () => {
  it('are exact when every tone sounds and no other', () => {
    expect(judge('A2 C#3 G3 B3 E4', 'A9')).toMatchObject({
      verdict: 'exact',
      bass: 'root',
      tones: ['A', 'C#', 'E', 'G', 'B'],
      missing: [],
      foreign: [],
    })
  })

  it('let the perfect fifth go, but not an altered one', () => {
    expect(verdict('E2 G#2 D3', 'E7')).toBe('omits fifth')
    expect(verdict('E2 G2 D3', 'Em7b5')).toBe('missing tones')
    expect(verdict('E2 G#2 D3', 'E7#5')).toBe('missing tones')
  })

  it('let go what the trade leaves out of big chords', () => {
    expect(verdict('C3 E3 Bb3 A4', 'C13')).toBe('omits')
    expect(verdict('C3 Bb3 F4', 'C11')).toBe('omits')
    expect(verdict('C3 Eb3 Bb3 F4', 'Cm11')).toBe('omits')
    expect(verdict('C3 Bb3 F4', 'Cm11')).toBe('missing tones')
    expect(verdict('C3 E3 Bb3 F#4', 'C9#11')).toBe('omits')
    expect(verdict('C3 E3 Bb3 G3', 'C9')).toBe('missing tones')
    expect(verdict('C3 E3 Bb3', 'C7alt')).toBe('missing tones')
    expect(verdict('C3 E3 Bb3 Eb4', 'C7alt')).toBe('omits')
  })

  it('know a rootless chord by its third and seventh', () => {
    expect(verdict('C#3 G3 B3 E4', 'A9')).toBe('rootless')
    expect(verdict('C#3 E3 B3', 'A9')).toBe('missing tones')
    expect(verdict('E3 G3', 'C')).toBe('missing tones')
  })

  it('contradict where another third, seventh or fixed fifth sounds in place of the right one', () => {
    expect(verdict('E2 G#2 B2 D3', 'Em7')).toBe('contradicts')
    expect(verdict('C3 Eb3 G3', 'C')).toBe('contradicts')
    expect(verdict('C3 E3 G3 Bb3', 'Cmaj7')).toBe('contradicts')
    expect(verdict('C3 E3 G3 B3', 'C7')).toBe('contradicts')
    expect(verdict('B2 D3 F#3 A3', 'Bm7b5')).toBe('contradicts')
    expect(verdict('F3 A3 C4', 'Em')).toBe('contradicts')
  })

  it('call extra tones what only adds to the chord', () => {
    expect(verdict('C3 E3 G3 D4', 'C')).toBe('extra tones')
    expect(verdict('C3 E3 G3 Bb3 Eb4', 'C7')).toBe('extra tones')
    expect(verdict('A2 E3 G3', 'A5')).toBe('extra tones')
  })

  it('miss the third of a bare fifth, which is a power chord', () => {
    expect(judge('C3 G3 C4', 'C')).toMatchObject({ verdict: 'missing tones', missing: [{ tone: '3', note: 'E' }] })
    expect(verdict('C3 G3 C4', 'C5')).toBe('exact')
  })

  it('never contradict a name for the same notes', () => {
    const pairs = [
      ['C3 E3 G3 A3', 'C6', 'Am7'],
      ['C3 Eb3 G3 A3', 'Cm6', 'Am7b5'],
      ['C3 D3 G3', 'Csus2', 'Gsus4'],
    ] as const
    for (const [pitches, one, other] of pairs) {
      expect(verdict(pitches, one)).toBe('exact')
      expect(verdict(pitches, other)).toBe('exact')
    }
  })

  it('are null for silence', () => {
    expect(judgeHarmony([], parseChordSymbol('C')!)).toBeNull()
  })
})

describe('the bass', () => {
  it('is the root, an inversion, or the slash', () => {
    expect(bass('C3 E3 G3', 'C')).toBe('root')
    expect(bass('E2 G3 C4', 'C')).toBe('inversion')
    expect(bass('E2 G3 C4', 'C/E')).toBe('slash agrees')
    expect(bass('C3 E3 G3', 'C/E')).toBe('slash wrong')
  })

  it('is no foreign tone when the symbol names it', () => {
    expect(judge('Bb2 E3 G3 C4', 'C/Bb')).toMatchObject({ verdict: 'exact', bass: 'slash agrees', lowest: 'Bb' })
    expect(judge('Bb2 E3 G3 C4', 'C').bass).toBe('slash wrong')
  })

  it('is spelled as the symbol spells it, among the tones by degree', () => {
    expect(judge('A#2 E3 G3 C4', 'C/A#').tones).toEqual(['C', 'E', 'G', 'A#'])
  })
})

describe('the harmony of a shape', () => {
  it('rests on its label', () => {
    // Frets from string 1: x 12 11 12 12 12 as written from the thick string.
    const frets = [12, 12, 12, 11, 12, null]
    expect(harmonyOf({ label: 'A9', frets }, GUITAR)).toEqual({
      verdict: 'exact',
      bass: 'root',
      tones: ['A', 'C#', 'E', 'G', 'B'],
    })
    expect(harmonyOf({ label: null, frets }, GUITAR)).toBeNull()
    expect(harmonyOf({ label: 'Riff', frets }, GUITAR)).toBeNull()
  })

  it('is the same with a capo: symbols are those of the shapes', () => {
    const frets = [0, 1, 0, 2, 3, null]
    expect(harmonyOf({ label: 'C', frets }, { ...GUITAR, capo: 3 })?.verdict).toBe('exact')
  })
})
