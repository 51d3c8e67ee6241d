import { describe, expect, it } from 'vitest'
import { moveChord, parseChordSymbol, toneNames } from '../../src/theory/chord-symbol.ts'
import { parseKey } from '../../src/theory/key.ts'
import { formatNoteName } from '../../src/theory/note-name.ts'

const degrees = (text: string) =>
  parseChordSymbol(text)
    ?.tones.map((tone) => tone.name)
    .join(' ') ?? null
const tones = (text: string) => toneNames(parseChordSymbol(text)!).join(' ')

describe('chord symbols', () => {
  it('are read in all their usual spellings', () => {
    // Common practice; the truth table of the published chord sets in tests/outside agrees with it.
    const groups: Readonly<Record<string, readonly string[]>> = {
      '1 3 5': ['C', 'CM', 'Cmaj', 'Cma', 'Cmajor'],
      '1 b3 5': ['Cm', 'Cmin', 'Cmi', 'C-', 'Cminor'],
      '1 b3 b5': ['Cdim', 'C°', 'Cm(b5)', 'Cmb5'],
      '1 3 #5': ['Caug', 'C+', 'C(#5)', 'C+5'],
      '1 3 b5': ['C(b5)', 'C-5'],
      '1 5': ['C5', 'C(no3)', 'Cno3', 'Comit3', 'C(no3rd)'],
      '1 4 5': ['Csus', 'Csus4', 'C4', 'C(sus4)', 'Cmsus4'],
      '1 2 5': ['Csus2'],
      '1 2 4 5': ['Csus24', 'Csus2sus4'],
      '1 3 5 6': ['C6', 'Cmaj6'],
      '1 b3 5 6': ['Cm6', 'C-6'],
      '1 3 5 6 9': ['C69', 'C6/9', 'C6(9)', 'C6add9'],
      '1 b3 5 6 9': ['Cm69', 'Cm6/9'],
      '1 3 5 b7': ['C7', 'Cdom7'],
      '1 3 5 7': ['Cmaj7', 'CM7', 'Cma7', 'CΔ', 'CΔ7', 'C∆', 'C△7', 'Cmaj7', 'C(maj7)'],
      '1 b3 5 b7': ['Cm7', 'Cmin7', 'C-7', 'Cmi7'],
      '1 b3 5 7': ['Cm(maj7)', 'CmM7', 'Cmmaj7', 'CmMaj7', 'C-Δ', 'CmΔ7', 'C-maj7', 'CminMaj7', 'Cm/maj7'],
      '1 b3 b5 b7': ['Cø', 'Cø7', 'Cm7b5', 'Cm7(b5)', 'C-7b5', 'CØ7'],
      '1 b3 b5 bb7': ['Cdim7', 'C°7', 'Co7'],
      '1 b3 b5 7': ['Cdimmaj7', 'C°maj7', 'C°M7'],
      '1 3 #5 b7': ['C+7', 'Caug7', 'C7#5', 'C7+', 'C7(#5)', 'C7+5'],
      '1 3 #5 7': ['Cmaj7#5', 'C+M7', 'Caugmaj7', 'Cmaj7+'],
      '1 3 b5 b7': ['C7b5', 'C7-5', 'C7(b5)'],
      '1 4 5 b7': ['C7sus4', 'C7sus', 'C7(sus4)'],
      '1 2 5 b7': ['C7sus2'],
      '1 3 5 9': ['Cadd9', 'C(add9)', 'C2', 'Cadd2', 'C(9)'],
      '1 b3 5 9': ['Cmadd9', 'Cm(add9)', 'Cm(9)'],
      '1 3 5 11': ['Cadd11', 'Cadd4'],
      '1 3 5 b7 9': ['C9', 'C7(9)'],
      '1 3 5 7 9': ['Cmaj9', 'CΔ9', 'CM9', 'Cmaj7(9)'],
      '1 b3 5 b7 9': ['Cm9', 'C-9'],
      '1 b3 5 7 9': ['CmM9', 'Cm(maj9)', 'Cmmaj9'],
      '1 3 5 b7 b9': ['C7b9', 'C7(b9)', 'C7-9'],
      '1 3 5 b7 #9': ['C7#9', 'C7(#9)', 'C7+9'],
      '1 3 b5 b7 9': ['C9b5'],
      '1 3 #5 b7 9': ['C9#5', 'Caug9', 'C+9'],
      '1 3 5 b7 9 #11': ['C9#11', 'C9(#11)'],
      '1 3 5 7 #11': ['Cmaj7#11', 'Cmaj7(#11)'],
      '1 3 5 b7 9 11': ['C11'],
      '1 b3 5 b7 9 11': ['Cm11'],
      '1 3 5 7 9 11': ['Cmaj11'],
      '1 b3 5 7 9 11': ['CmM11'],
      '1 3 5 b7 9 11 13': ['C13'],
      '1 3 5 7 9 11 13': ['Cmaj13'],
      '1 3 5 b7 b9 11 13': ['C13b9'],
      '1 3 5 b7 9 #11 13': ['C13#11', 'C13(#11)'],
      '1 3 5 b7 b13': ['C7b13', 'C7(b13)'],
      '1 3 5 b7 13': ['C7(13)', 'C7add13'],
      '1 4 5 b7 9': ['C9sus4', 'C9sus'],
      '1 4 5 b7 9 13': ['C13sus4'],
      '1 4 5 b7 b9': ['C7sus4b9', 'C7sus4(b9)'],
      '1 3 5 b7 b9 #9': ['C7b9#9', 'C7(b9,#9)', 'C7(b9 #9)'],
      '1 3 b5 #5 b7 b9 #9': ['C7alt', 'Calt'],
      '1 b3 5 b6': ['Cmb6', 'Cm(b6)'],
      '1 3 b7': ['C7no5', 'C7(no5)'],
    }
    for (const [wanted, texts] of Object.entries(groups))
      for (const text of texts) expect(degrees(text), text).toBe(wanted)
  })

  it('are told from words and slips', () => {
    const none = [
      '',
      'H7',
      'Dance',
      'Bass',
      'Add9',
      'Go',
      'Do',
      'Am7x',
      'C(',
      'C7()',
      'C(b9',
      'C)',
      'C3',
      'C8',
      'Cm5',
      'c',
      'am',
      'C/H',
      'C/',
      'C//E',
      'N.C.',
      'C7b4',
      'E-side',
      'Cø6',
      'Cadd',
      'C17',
    ]
    for (const text of none) expect(parseChordSymbol(text), text).toBeNull()
  })

  it('are spelled from their root by degree', () => {
    // Common practice: chord tones follow the letters of the chord, not the key.
    expect(tones('A9')).toBe('A C# E G B')
    expect(tones('C7#9')).toBe('C E G Bb D#')
    expect(tones('D7b9')).toBe('D F# A C Eb')
    expect(tones('F#dim7')).toBe('F# A C Eb')
    expect(tones('Bbdim7')).toBe('Bb Db Fb Abb')
    expect(tones('E+')).toBe('E G# B#')
    expect(tones('Abm')).toBe('Ab Cb Eb')
    expect(tones('G#7')).toBe('G# B# D# F#')
  })

  it('take a plainer name where three signs would be needed', () => {
    expect(tones('Cbdim7')).toBe('Cb Ebb Gbb Ab')
  })

  it('keep one sign after the root for the root', () => {
    expect(tones('Cb5')).toBe('Cb Gb')
    expect(tones('F#7')).toBe('F# A# C# E')
    expect(tones('F##dim7')).toBe('F## A# C# E')
    expect(tones('B♭m7')).toBe('Bb Db F Ab')
  })

  it('carry their slash bass', () => {
    expect(formatNoteName(parseChordSymbol('D/F#')!.bass!)).toBe('F#')
    expect(formatNoteName(parseChordSymbol('C6/9/E')!.bass!)).toBe('E')
    expect(degrees('Am7/G')).toBe('1 b3 5 b7')
  })

  it('are cut into pieces for the page', () => {
    const pieces = (text: string) => {
      const { root, accidental, onLine, raised, bass } = parseChordSymbol(text)!.display
      return [root, accidental, onLine, raised, bass === null ? null : bass.root + bass.accidental]
    }
    expect(pieces('Em7')).toEqual(['E', '', 'm', '7', null])
    expect(pieces('Bbmaj7')).toEqual(['B', '♭', '', 'maj7', null])
    expect(pieces('F#m7b5/C#')).toEqual(['F', '♯', 'm', '7♭5', 'C♯'])
    expect(pieces('C7(b9,#11)')).toEqual(['C', '', '', '7(♭9,♯11)', null])
    expect(pieces('Gdim7')).toEqual(['G', '', 'dim', '7', null])
    expect(pieces('Bø')).toEqual(['B', '', '', 'ø', null])
    expect(pieces('Dsus4')).toEqual(['D', '', '', 'sus4', null])
    expect(pieces('A')).toEqual(['A', '', '', '', null])
  })

  it('move along the neck by the side of the key', () => {
    const moved = (text: string, frets: number, key: string) =>
      moveChord(parseChordSymbol(text)!, frets, parseKey(key)!).text
    expect(moved('A9', -1, 'E minor')).toBe('G#9')
    expect(moved('A9', -1, 'F major')).toBe('Ab9')
    expect(moved('D/F#', 2, 'C major')).toBe('E/G#')
    expect(moved('C/D', 1, 'F major')).toBe('Db/Eb')
    expect(moved('E', 1, 'F# major')).toBe('E#')
    expect(moved('Em7', 0, 'F major')).toBe('Em7')
    expect(moved('Em7', 12, 'F major')).toBe('Em7')
  })
})
