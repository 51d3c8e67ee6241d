import { describe, expect, it } from 'vitest'
import { EM7, hold, readSound } from './sentences.ts'

const BEATS = '  1: x x\n  2: x x'
const FOUR = `bar 1\n${BEATS}\nbar 2-4 = bar 1`

hold('repeats', [
  { law: 'bars that the part has', lines: `${FOUR}\nrepeat ⟦unknown-bar:1-5⟧` },
  { law: 'repeats do not nest', lines: `${FOUR}\nrepeat 1-4\n⟦bad-repeat:repeat 2-3⟧` },
  { law: 'nor overlap', lines: `${FOUR}\nrepeat 1-2\n⟦bad-repeat:repeat 2-4⟧` },
  { law: 'one after the other is fine', lines: `${FOUR}\nrepeat 1-2\nrepeat 3-4` },
  { law: 'a repeat is played twice at least', lines: `${FOUR}\n⟦bad-repeat:repeat 1-4 times 1⟧` },
  { law: 'a repeat names its bars', lines: `${FOUR}\n⟦bad-repeat:repeat⟧` },
  { law: 'a repeat runs upward', lines: `${FOUR}\n⟦bad-repeat:repeat 4-1⟧` },
  {
    law: 'a hold at its first bar must find equal notes at its end too',
    lines: `pickup\n  2: x Em7\nbar 1\n  1: ⟦hold-across-repeat:-⟧ x\n  2: x x\nrepeat 1-1`,
  },
  {
    law: 'equal notes are fine',
    lines: `pickup\n  2: x Em7\nbar 1\n  1: - x\n  2: x Em7\nrepeat 1-1`,
    bars: { 0: ['0+1680 x down on 5,4,3,2,1', `1680+3360 up ${EM7}`] },
  },
  {
    law: 'a silence at the end is nothing to hold',
    lines: `pickup\n  2: x Em7\nbar 1\n  1: ⟦hold-across-repeat:-⟧ x\n  2: x .\nrepeat 1-1`,
  },
  {
    law: 'an unstruck action likewise',
    lines: `pickup\n  2: x 5@3\nbar 1\n  1: ⟦hold-across-repeat:h:7@3⟧ x\n  2: x 3@3\nrepeat 1-1`,
  },
  {
    law: 'an unstruck action that finds the same fret again is fine',
    lines: `pickup\n  2: x 5@3\nbar 1\n  1: h:7@3 x\n  2: x 5@3\nrepeat 1-1`,
  },
  {
    law: 'a ringing note it acts on must ring there too',
    lines: `pickup\n  2: 5@3_ x@6\nbar 1\n  1: ⟦hold-across-repeat:h:7@3⟧ x\n  2: x x\nrepeat 1-1`,
  },
  { law: 'a pickup is not repeated', lines: `pickup\n  2: x x\nbar 1\n  1: x x\n  2: x x\n⟦bad-repeat:repeat 0-1⟧` },
  {
    law: 'also where it stands later in that bar',
    lines: `pickup\n  2: . 5@3_\nbar 1\n  1: x@6 x@6\n  2: ⟦hold-across-repeat:h:7@3⟧ x\nrepeat 1-1`,
  },
  {
    law: 'a hold of a scratch finds a scratch again',
    lines: `pickup\n  2: x x\nbar 1\n  1: - x\n  2: x x\nrepeat 1-1`,
    bars: {
      0: ['0+1680 x down on 6,5,4,3,2,1', '1680+3360 x up on 6,5,4,3,2,1'],
      1: ['1680+1680 x up on 6,5,4,3,2,1', '3360+1680 x down on 6,5,4,3,2,1', '5040+1680 x up on 6,5,4,3,2,1'],
    },
  },
  {
    law: 'where the second bar begins with a hold nothing jumps to it',
    lines: `bar 1\n  1: x x\n  2: x Em7\nbar 2\n  1: - x\n  2: x x\nrepeat 1-2`,
  },
  {
    law: 'a copy line that begins a repeat carries the finding',
    lines: `bar 1\n  1: x x\n  2: x Em7\nbar 2\n  1: - x\n  2: x Em7\n⟦hold-across-repeat:bar 3 = bar 2⟧\nbar 4\n  1: x x\n  2: x x\nrepeat 3-4`,
  },
])

describe('a repeat', () => {
  it('is played twice, or as often as `times` says in all', () => {
    const { repeats } = readSound({ lines: `${FOUR}\nrepeat 1-2\nrepeat 3-4 times 3` }).parts[0]!
    expect(repeats).toEqual([
      { from: 1, to: 2, times: 2, endings: [] },
      { from: 3, to: 4, times: 3, endings: [] },
    ])
  })
})
