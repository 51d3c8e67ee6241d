import { parseChordSymbol } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { chordKind } from '../../../src/exchange/musicxml/chord-kind.ts'

function told(symbol: string): string {
  const { kind, degrees } = chordKind(parseChordSymbol(symbol)!)
  return [kind, ...degrees.map(({ type, value, alter }) => `${type} ${value} ${alter}`)].join(', ')
}

describe('the kind of a chord symbol', () => {
  // Source: MusicXML 4.0, kind-value.
  it.each([
    ['C', 'major'],
    ['Am', 'minor'],
    ['Faug', 'augmented'],
    ['Bdim', 'diminished'],
    ['G7', 'dominant'],
    ['Cmaj7', 'major-seventh'],
    ['Dm7', 'minor-seventh'],
    ['Bdim7', 'diminished-seventh'],
    ['E7#5', 'augmented-seventh'],
    ['F#m7b5', 'half-diminished'],
    ['Fm(maj7)', 'major-minor'],
    ['C6', 'major-sixth'],
    ['Am6', 'minor-sixth'],
    ['A9', 'dominant-ninth'],
    ['Cmaj9', 'major-ninth'],
    ['Em9', 'minor-ninth'],
    ['C11', 'dominant-11th'],
    ['Em11', 'minor-11th'],
    ['G13', 'dominant-13th'],
    ['Dsus2', 'suspended-second'],
    ['Dsus4', 'suspended-fourth'],
    ['E5', 'power'],
  ])('%s is %s', (symbol, kind) => {
    expect(told(symbol)).toBe(kind)
  })

  // Source: MusicXML 4.0, degree-alter: added degrees are reckoned from a dominant chord, altered ones from the kind's own.
  it.each([
    ['C7b9', 'dominant, add 9 -1'],
    ['C7#9', 'dominant, add 9 1'],
    ['A7sus4', 'suspended-fourth, add 7 0'],
    ['Cadd9', 'major, add 9 0'],
    ['C69', 'major-sixth, add 9 0'],
    ['G7b5', 'dominant, alter 5 -1'],
    ['C9#11', 'dominant-ninth, add 11 1'],
    ['C(b5)', 'major, alter 5 -1'],
    ['G7no3', 'dominant, subtract 3 0'],
  ])('%s is %s', (symbol, words) => {
    expect(told(symbol)).toBe(words)
  })
})
