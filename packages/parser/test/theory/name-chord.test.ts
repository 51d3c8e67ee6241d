import { describe, expect, it } from 'vitest'
import { parseChordSymbol } from '../../src/theory/chord-symbol.ts'
import { NAMING_COSTS } from '../../src/theory/chord-types.ts'
import { judgeHarmony } from '../../src/theory/judge-harmony.ts'
import { parseKey } from '../../src/theory/key.ts'
import { nameChord, suggestName } from '../../src/theory/name-chord.ts'
import { midiOf, parsePitch } from '../../src/theory/pitch.ts'

const midis = (pitches: string) => pitches.split(' ').map((text) => midiOf(parsePitch(text)!))
const first = (pitches: string, key?: string) =>
  nameChord(midis(pitches), key ? { key: parseKey(key)! } : {})[0]?.symbol

describe('names for sounding notes', () => {
  it('are the plain ones for plain chords', () => {
    // Common practice: the open shapes every method starts with.
    expect(first('C3 E3 G3 C4 E4')).toBe('C')
    expect(first('A2 E3 A3 C4 E4')).toBe('Am')
    expect(first('E2 B2 D3 G#3 B3 E4')).toBe('E7')
    expect(first('D3 A3 C#4 F#4')).toBe('Dmaj7')
    expect(first('F#2 A3 D4')).toBe('D/F#')
    expect(first('B2 D3 F3 A3')).toBe('Bm7b5')
  })

  it('know a power chord, and give no name to a double stop or a single note', () => {
    expect(first('E2 B2 E3')).toBe('E5')
    expect(first('B2 E3')).toBe('E5/B')
    expect(nameChord(midis('C3 E3'))).toEqual([])
    expect(nameChord(midis('C3 C4'))).toEqual([])
    expect(nameChord([])).toEqual([])
  })

  it('are spelled by the key', () => {
    expect(first('G#2 C3 D#3', 'E major')).toBe('G#')
    expect(first('G#2 C3 D#3', 'Eb major')).toBe('Ab')
    expect(first('A#2 D3 F3', 'C major')).toBe('Bb')
    expect(first('C#3 E3 G#3', 'C major')).toBe('C#m')
  })

  it('come with a runner-up where it is close', () => {
    const sus = suggestName(midis('G2 C3 D3 G3'))!
    expect([sus.name.symbol, sus.runnerUp?.symbol]).toEqual(['Gsus4', 'Csus2/G'])
    expect(suggestName(midis('C3 E3 G3'))?.runnerUp).toBeNull()
    expect(suggestName(midis('C3 E3'))).toBeNull()
    expect(suggestName(midis('A#2 E3 A4'))).toBeNull()
  })

  it('lean to a root of the key and to the chord before', () => {
    // Three minor thirds: any of the four notes may be the root.
    const dim7 = midis('D3 F3 Ab3 B3')
    const plain = nameChord(dim7)[0]!
    const before = nameChord(dim7, { key: parseKey('C major')!, before: parseChordSymbol('D7') })[0]!
    expect(before.cost).toBeCloseTo(plain.cost - NAMING_COSTS.rootInKey - NAMING_COSTS.followsChord)
  })

  it('never disagree with the notes they are given for', () => {
    for (let set = 0; set < 4096; set += 1) {
      const notes = [...Array(12).keys()].filter((bit) => set & (1 << bit)).map((bit) => 48 + bit)
      for (const name of nameChord(notes)) {
        const judged = judgeHarmony(notes, parseChordSymbol(name.symbol)!)!
        expect(['exact', 'omits', 'omits fifth', 'rootless'], name.symbol).toContain(judged.verdict)
        expect(['root', 'slash agrees'], name.symbol).toContain(judged.bass)
      }
    }
  })
})
