import { Key as TonalKey, Note as TonalNote } from 'tonal'
import { describe, expect, it } from 'vitest'
import { parseKey, scaleOf } from '../../packages/parser/src/theory/key.ts'
import { formatNoteName, LETTERS, parseNoteName, pitchClassOf } from '../../packages/parser/src/theory/note-name.ts'
import { formatPitch, frequencyHz, midiOf, parsePitch } from '../../packages/parser/src/theory/pitch.ts'
import { nameOf, spellWritten } from '../../packages/parser/src/theory/spell.ts'

const MAJORS = ['Cb', 'Gb', 'Db', 'Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#']
const MINORS = ['Ab', 'Eb', 'Bb', 'F', 'C', 'G', 'D', 'A', 'E', 'B', 'F#', 'C#', 'G#', 'D#', 'A#']

describe('standard tuning', () => {
  it('has the published frequencies', () => {
    // Equal temperament at A4 = 440 Hz (ISO 16), f = 440 * 2^((m - 69) / 12), to a thousandth of a hertz.
    const strings: readonly (readonly [string, number, number])[] = [
      ['E2', 40, 82.407],
      ['A2', 45, 110],
      ['D3', 50, 146.832],
      ['G3', 55, 195.998],
      ['B3', 59, 246.942],
      ['E4', 64, 329.628],
    ]
    for (const [name, midi, hertz] of strings) {
      expect(midiOf(parsePitch(name)!)).toBe(midi)
      expect(frequencyHz(midi)).toBeCloseTo(hertz, 3)
    }
  })
})

describe('octaves', () => {
  it('are those of the theory library for every letter and sign', () => {
    // tonal 6.4.3 Note.midi.
    for (const letter of LETTERS) {
      for (const signs of ['bb', 'b', '', '#', '##']) {
        for (let octave = 0; octave < 9; octave += 1) {
          const text = `${letter}${signs}${octave}`
          expect(midiOf(parsePitch(text)!), text).toBe(TonalNote.midi(text))
        }
      }
    }
  })

  it('are written one higher than they sound on a guitar', () => {
    // The guitar's clef has an 8 below it (common practice): string 5, fret 3 sounds MIDI 48 and is written C4.
    const written = spellWritten(45 + 3, { chord: null, key: parseKey('C major')!, writtenAbove: 12 })
    expect(formatPitch(written)).toBe('C4')
  })
})

describe('spelling in thirty keys', () => {
  it('follows the scale of each major key', () => {
    // tonal 6.4.3 Key.majorKey.
    for (const tonic of MAJORS) {
      const key = parseKey(`${tonic} major`)!
      const { scale, keySignature } = TonalKey.majorKey(tonic)
      expect(scaleOf(key).map(formatNoteName), tonic).toEqual([...scale])
      expect(key.fifths).toBe(fifthsOf(keySignature))
      for (const name of scale)
        expect(formatNoteName(nameOf(pitchClassOf(parseNoteName(name)!), { chord: null, key }))).toBe(name)
    }
  })

  it('follows the natural, harmonic and melodic scales of each minor key', () => {
    // tonal 6.4.3 Key.minorKey.
    for (const tonic of MINORS) {
      const key = parseKey(`${tonic} minor`)!
      const { natural, harmonic, melodic, keySignature } = TonalKey.minorKey(tonic)
      expect(scaleOf(key).map(formatNoteName), tonic).toEqual([...natural.scale])
      expect(key.fifths).toBe(fifthsOf(keySignature))
      for (const name of [...natural.scale, ...harmonic.scale, ...melodic.scale]) {
        const ours = formatNoteName(nameOf(pitchClassOf(parseNoteName(name)!), { chord: null, key }))
        expect(ours, `${name} in ${tonic} minor`).toBe(name)
      }
    }
  })
})

function fifthsOf(signature: string): number {
  return signature.startsWith('b') ? -signature.length : signature.length
}
