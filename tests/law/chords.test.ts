import { describe, expect, it } from 'vitest'
import { barOf, hold, readSound } from './sentences.ts'

const BEATS = '  1: Em7 x\n  2: x x'

hold('chords', [
  { law: 'the entries share the bar evenly', lines: `bar 1 chords ⟦chords-off-grid:Em7 A9 Em7⟧\n${BEATS}` },
  { law: 'and must fall on slots', lines: `bar 1 chords ⟦chords-off-grid:Em7 - - - A9 - - -⟧\n${BEATS}` },
  {
    law: 'some must stand there',
    lines: `bar 1 ⟦chords-off-grid:chords⟧\n${BEATS}`,
  },
])

const LINES: readonly { law: string; attributes?: string; lines: string; bars: Record<number, unknown> }[] = [
  { law: 'one entry a beat', lines: `bar 1 chords Em7 A9\n${BEATS}`, bars: { 1: ['0 Em7', '3360 A9'] } },
  { law: '`-` keeps the symbol before', lines: `bar 1 chords Em7 - - A9\n${BEATS}`, bars: { 1: ['0 Em7', '5040 A9'] } },
  { law: '`.` means no chord', lines: `bar 1 chords . A9\n${BEATS}`, bars: { 1: ['0 none', '3360 A9'] } },
  {
    law: 'the last words of their line',
    lines: `bar 1 grid 16 chords Em7 - - - - - - A9\n  1: Em7 x x x\n  2: x x x x`,
    bars: { 1: ['0 Em7', '5880 A9'] },
  },
  {
    law: 'in three beats',
    attributes: 'grid=8 time=3/4',
    lines: 'bar 1 chords C - G\n  1-3: Em7 x x x x x',
    bars: { 1: ['0 C', '6720 G'] },
  },
  {
    law: 'a pickup shares its own time',
    lines: `pickup chords Em7 A9\n  2: x x\nbar 1 chords C\n${BEATS}`,
    bars: { 0: ['0 Em7', '1680 A9'], 1: ['0 C'] },
  },
  {
    law: 'a bar without `chords` shows the labels of its shapes',
    lines: 'bar 1\n  1: Em7 A9\n  2: x A9',
    bars: { 1: ['0 Em7*', '1680 A9*'] },
  },
  {
    law: 'each where it changes, across bars too',
    lines: 'bar 1\n  1: Em7 A9\n  2: x A9\nbar 2\n  1: A9 x\n  2: Em7 x',
    bars: { 2: ['3360 Em7*'] },
  },
  {
    law: 'a form of a shape has the label of its name',
    lines: 'bar 1\n  1: Em7 Em7.open\n  2: x x',
    bars: { 1: ['0 Em7*'] },
  },
  { law: 'notes and scratches show none', lines: 'bar 1\n  1: 7@3 x\n  2: x x', bars: { 1: [] } },
  {
    law: 'a written symbol holds into bars without `chords`',
    lines: `bar 1 chords C\n${BEATS}\nbar 2\n  1: Em7 x\n  2: x x`,
    bars: { 1: ['0 C'], 2: ['0 Em7*'] },
  },
  {
    law: 'what is in force is not shown again',
    lines: `bar 1 chords A9 Em7\n${BEATS}\nbar 2\n${BEATS}`,
    bars: { 2: [] },
  },
  {
    law: 'a moved shape has a moved label, by the side of the key',
    lines: 'bar 1\n  1: Em7^+2 x\n  2: x x\nfrom 2 key Db major\nbar 2\n  1: Em7^+2 x\n  2: x x',
    bars: { 1: ['0 F#m7*'], 2: ['0 Gbm7*'] },
  },
  {
    law: 'at a later ending what is in force is that of the bar before ending 1',
    lines: `bar 1\n${BEATS}\nbar 2\n  1: A9 x\n  2: x x\nbar 3\n${BEATS}\nrepeat 1-2\nending 1 bars 2\nending 2 bars 3`,
    bars: { 2: ['0 A9*'], 3: [] },
  },
]

describe('the chord row', () => {
  it.each(LINES)('$law', ({ bars, ...sentence }) => {
    const lesson = readSound(sentence)
    for (const [bar, chords] of Object.entries(bars)) {
      const row = barOf(lesson, Number(bar)).chords
      expect(row.map(({ at, symbol, written }) => `${at} ${symbol ?? 'none'}${written ? '' : '*'}`)).toEqual(chords)
    }
  })
})
