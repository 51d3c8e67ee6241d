import { describe, expect, it } from 'vitest'
import { formatPitch, frequencyHz, midiOf, parsePitch, pitchNamed } from '../../src/theory/pitch.ts'

describe('scientific pitch', () => {
  it('changes octave at C, by letter', () => {
    // ISO 16 and MIDI 1.0: A4 = 440 Hz = number 69; the octave belongs to the letter (common practice).
    const cases = { A4: 69, C4: 60, Cb4: 59, 'B#3': 60, 'E#4': 65, Fb4: 64, 'F##3': 55, Bbb3: 57, 'C-1': 0, G9: 127 }
    for (const [text, midi] of Object.entries(cases)) {
      const pitch = parsePitch(text)!
      expect(midiOf(pitch), text).toBe(midi)
      expect(formatPitch(pitch)).toBe(text)
      expect(pitchNamed(midi, pitch)).toEqual(pitch)
    }
  })

  it('is null for what is no pitch', () => {
    for (const text of ['', 'C', '4', 'H4', 'c4', 'C###4', 'C4x', 'C#b4', 'C 4'])
      expect(parsePitch(text), text).toBeNull()
  })

  it('sounds at 440 Hz on A4', () => {
    expect(frequencyHz(69)).toBe(440)
  })

  it('refuses a name that is not the sound', () => {
    expect(() => pitchNamed(60, { letter: 'D', alter: 0 })).toThrow()
  })
})
