import { describe, expect, it } from 'vitest'
import { parseChordSymbol } from '../../src/theory/chord-symbol.ts'
import { parseKey } from '../../src/theory/key.ts'
import { formatNoteName } from '../../src/theory/note-name.ts'
import { formatPitch } from '../../src/theory/pitch.ts'
import { nameOf, spellWritten } from '../../src/theory/spell.ts'

const written = (fingeredMidi: number, key: string, symbol: string | null = null, writtenAbove = 12) =>
  formatPitch(
    spellWritten(fingeredMidi, {
      chord: symbol === null ? null : parseChordSymbol(symbol),
      key: parseKey(key)!,
      writtenAbove,
    }),
  )

describe('written pitch', () => {
  it('stands an octave above the sound for the guitar, at the sound for the ukulele', () => {
    expect(written(48, 'C major')).toBe('C4')
    expect(written(60, 'C major', null, 0)).toBe('C4')
  })

  it('follows the chord before the key', () => {
    expect(written(51, 'C minor', 'C7#9')).toBe('D#4')
    expect(written(51, 'E major', 'D7b9')).toBe('Eb4')
    expect(written(47, 'C major', 'Abm')).toBe('Cb4')
    expect(written(48, 'C major', 'E+')).toBe('B#3')
  })

  it('spells a slash bass as the symbol does', () => {
    expect(written(46, 'E major', 'C/Bb')).toBe('Bb3')
  })

  it('follows the degrees of the key, the leading tone raised in minor', () => {
    expect(written(44, 'A minor')).toBe('G#3')
    expect(written(53, 'F# major')).toBe('E#4')
    expect(written(55, 'G# minor')).toBe('F##4')
    expect(written(59, 'Gb major')).toBe('Cb5')
  })

  it('otherwise takes the side of the key', () => {
    expect(written(46, 'C major')).toBe('A#3')
    expect(written(46, 'E minor')).toBe('A#3')
    expect(written(44, 'F major')).toBe('Ab3')
    expect(written(49, 'G minor')).toBe('Db4')
  })

  it('gives each pitch class one name in a chord', () => {
    for (const symbol of [null, 'C7#9', 'F7(b5,#11)', 'C7alt', 'Gb7', 'A#m7']) {
      const chord = symbol === null ? null : parseChordSymbol(symbol)
      for (const key of ['C# major', 'Cb major', 'A minor', 'Ab minor']) {
        for (let midi = 40; midi < 52; midi += 1) {
          const [low, high] = [midi, midi + 12].map((at) => formatNoteName(nameOf(at, { chord, key: parseKey(key)! })))
          expect(low).toBe(high)
        }
      }
    }
  })
})
