import { describe, expect, it } from 'vitest'
import { formatKey, isDegreeOf, isSharpKey, parseKey, scaleOf, signatureOf } from '../../src/theory/key.ts'
import { formatNoteName } from '../../src/theory/note-name.ts'

const names = (text: string) => scaleOf(parseKey(text)!).map(formatNoteName).join(' ')

describe('keys', () => {
  it('have the signature of the circle of fifths', () => {
    // Common practice: the fifteen signatures.
    const majors = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#']
    const minors = ['Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#']
    for (const [at, tonic] of majors.entries()) expect(parseKey(`${tonic} major`)?.fifths).toBe(at - 7)
    for (const [at, tonic] of minors.entries()) expect(parseKey(`${tonic} minor`)?.fifths).toBe(at - 7)
  })

  it('are refused past seven signs and when they are none', () => {
    for (const text of [
      'G# major',
      'Fb major',
      'Db minor',
      'B# minor',
      'E',
      'Em',
      'E  dorian',
      'e minor',
      'H minor',
      '',
    ]) {
      expect(parseKey(text), text).toBeNull()
    }
  })

  it('spell their degrees', () => {
    expect(names('E minor')).toBe('E F# G A B C D')
    expect(names('F# major')).toBe('F# G# A# B C# D# E#')
    expect(names('Ab minor')).toBe('Ab Bb Cb Db Eb Fb Gb')
    expect(isDegreeOf({ letter: 'G', alter: 1 }, parseKey('A minor')!)).toBe(false)
    expect(formatKey(parseKey('Bb major')!)).toBe('Bb major')
  })

  it('write sharps from F and flats from B', () => {
    expect(signatureOf(3).map(formatNoteName)).toEqual(['F#', 'C#', 'G#'])
    expect(signatureOf(-4).map(formatNoteName)).toEqual(['Bb', 'Eb', 'Ab', 'Db'])
    expect(signatureOf(0)).toEqual([])
  })

  it('count C major and A minor among the sharp keys', () => {
    expect(isSharpKey(parseKey('C major')!)).toBe(true)
    expect(isSharpKey(parseKey('D minor')!)).toBe(false)
  })
})
