import { describe, expect, it } from 'vitest'
import { barOf, brief, EM7, hold, readSound } from './sentences.ts'

const BEATS = '  1: x x\n  2: x x'
const FOUR = `bar 1\n${BEATS}\nbar 2-4 = bar 1`
const REPEAT = `${FOUR}\nrepeat 1-3 times 3`

hold('endings', [
  {
    law: 'the first ends where its repeat ends',
    lines: `${REPEAT}\n⟦bad-ending:ending 1-2 bars 2-2⟧\nending 3 bars 3-3`,
  },
  {
    law: 'each next starts right after',
    lines: `${FOUR}\nbar 5 = bar 1\nrepeat 1-3 times 3\nending 1-2 bars 3-3\n⟦bad-ending:ending 3 bars 5-5⟧`,
  },
  { law: 'numbers without gaps', lines: `${REPEAT}\nending 1 bars 3-3\n⟦bad-ending:ending 3 bars 4-4⟧` },
  { law: 'numbers from 1', lines: `${REPEAT}\n⟦bad-ending:ending 2-3 bars 3-3⟧` },
  { law: 'numbers to `times`', lines: `${REPEAT}\nending 1 bars 3-3\n⟦bad-ending:ending 2 bars 4-4⟧` },
  { law: 'bars that the part has', lines: `${REPEAT}\nending 1-2 bars 3-3\nending 3 bars ⟦unknown-bar:5-5⟧` },
  { law: 'an ending belongs to a repeat', lines: `${FOUR}\n⟦bad-ending:ending 1 bars 3-4⟧` },
  { law: 'an ending that cannot be read', lines: `${REPEAT}\n⟦bad-ending:ending one⟧` },
  {
    law: 'at a later ending "before" is the bar before ending 1: nothing to hold there',
    lines:
      'bar 1\n  1: x x\n  2: x .\nbar 2\n  1: x x\n  2: x Em7\nbar 3\n  1: ⟦nothing-to-hold:-⟧ x\n  2: x x\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
  },
  {
    law: 'what is held there belongs to the bar before ending 1',
    lines:
      'bar 1\n  1: x x\n  2: x Em7\nbar 2\n  1: - x\n  2: x x\nbar 3\n  1: - x\n  2: x x\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
    bars: {
      1: [
        '0+1680 x down on 5,4,3,2,1',
        '1680+1680 x up on 5,4,3,2,1',
        '3360+1680 x down on 5,4,3,2,1',
        `5040+3360 up ${EM7}`,
      ],
      3: [
        '0+1680 none =7@5 =9@4 =7@3 =8@2 =7@1',
        '1680+1680 x up on 5,4,3,2,1',
        '3360+1680 x down on 5,4,3,2,1',
        '5040+1680 x up on 5,4,3,2,1',
      ],
    },
  },
  {
    law: 'an unstruck action there acts on the bar before ending 1',
    lines:
      'bar 1\n  1: x x\n  2: x 5@3\nbar 2\n  1: x x\n  2: x 9@3\nbar 3\n  1: h:7@3 x\n  2: x x\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
    bars: {
      3: [
        '0+1680 none 5h7@3',
        '1680+1680 x up on 6,5,4,3,2,1',
        '3360+1680 x down on 6,5,4,3,2,1',
        '5040+1680 x up on 6,5,4,3,2,1',
      ],
    },
  },
  {
    law: 'a hold at the first bar of a repeat looks at the end of each ending that jumps back',
    lines:
      'pickup\n  2: x Em7\nbar 1\n  1: ⟦hold-across-repeat:-⟧ x\n  2: x x\nbar 2\n  1: x x\n  2: x x\nbar 3\n  1: x x\n  2: x Em7\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
  },
  {
    law: 'the last ending does not jump back',
    lines:
      'pickup\n  2: x Em7\nbar 1\n  1: - x\n  2: x x\nbar 2\n  1: x x\n  2: x Em7\nbar 3\n  1: x x\n  2: x x\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
  },
  {
    law: 'what rings into ending 1 rings for a later ending too',
    lines:
      'bar 1\n  1: x x\n  2: 5@3_ 3@6\nbar 2\n  1: x x\n  2: x x\nbar 3\n  1: h:7@3 .\n  2: . .\nrepeat 1-2\nending 1 bars 2\nending 2 bars 3',
    bars: {
      1: [
        '0+1680 x down on 6,5,4,3,2,1',
        '1680+1680 x up on 6,5,4,3,2,1',
        '3360+1680 down 5@3~6720 ring',
        '5040+1680 up 3@6',
      ],
      3: ['0+1680 none =3@6 5h7@3', '1680+5040 rest'],
    },
  },
  {
    law: 'a third ending looks at the bar before ending 1 as well',
    lines:
      'bar 1\n  1: x x\n  2: x 5@3\nbar 2\n  1: . .\n  2: . 9@3\nbar 3 = bar 2\nbar 4\n  1: h:7@3 .\n  2: . .\nrepeat 1-2 times 3\nending 1 bars 2\nending 2 bars 3\nending 3 bars 4',
    bars: { 4: ['0+1680 none 5h7@3', '1680+5040 rest'] },
  },
  {
    law: 'a scratch there is shown on the shape before ending 1',
    lines:
      'bar 1\n  1: Em7 x\n  2: . .\nbar 2\n  1: E5 x\n  2: . .\nbar 3\n  1: x .\n  2: . .\nrepeat 1-2\nending 1 bars 2\nending 2 bars 3',
    bars: {
      2: ['0+1680 down 7@5 9@4 9@3', '1680+1680 x up on 5,4,3', '3360+3360 rest'],
      3: ['0+1680 x down on 5,4,3,2,1', '1680+5040 rest'],
    },
  },
])

describe('endings', () => {
  it('stand with their repeat, numbers and bars', () => {
    const { repeats } = readSound({ lines: `${REPEAT}\nending 1-2 bars 3-3\nending 3 bars 4-4` }).parts[0]!
    expect(repeats).toEqual([
      {
        from: 1,
        to: 3,
        times: 3,
        endings: [
          { numbers: [1, 2], from: 3, to: 3 },
          { numbers: [3], from: 4, to: 4 },
        ],
      },
    ])
  })

  it('may be given as one bar, without a dash', () => {
    const { repeats } = readSound({ lines: `${FOUR}\nrepeat 1-3\nending 1 bars 3\nending 2 bars 4` }).parts[0]!
    expect(repeats[0]!.endings.map(({ from, to }) => [from, to])).toEqual([
      [3, 3],
      [4, 4],
    ])
  })

  it('stop what rings in the ending before', () => {
    const lesson = readSound({
      lines:
        'bar 1\n  1: x x\n  2: x x\nbar 2\n  1: x x\n  2: x 5@3_\nbar 3\n  1: 3@6 -\n  2: - -\nrepeat 1-2\nending 1 bars 2-2\nending 2 bars 3-3',
    })
    expect(barOf(lesson, 2).events.map(brief).at(-1)).toBe('5040+1680 up 5@3 ring')
  })
})
