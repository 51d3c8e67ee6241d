import { describe, expect, it } from 'vitest'
import { barOf, readSound } from './sentences.ts'

/** One bar of strokes and the way the hand goes at each, in order; `n` is an unstruck action. */
interface Hand {
  readonly law: string
  readonly attributes: string
  readonly lines: string
  readonly bar?: number
  readonly strokes: string
  readonly groups?: readonly (readonly [at: number, length: number, parts: number])[]
}

const TWO_4 = 'grid=16 time=2/4'
const REST = '\n  2: . . . .'

const HANDS: readonly Hand[] = [
  {
    law: 'even slots are down, odd up',
    attributes: TWO_4,
    lines: 'bar 1\n  1: x x x x\n  2: x x x x',
    strokes: 'dudu dudu',
  },
  { law: 'through holds and rests', attributes: TWO_4, lines: 'bar 1\n  1: . x - x\n  2: - - x .', strokes: 'u u d' },
  {
    law: 'each bar starts with a down',
    attributes: 'grid=8 time=3/8',
    lines: 'bar 1\n  1-3: x x x\nbar 2\n  1-3: x x x',
    bar: 2,
    strokes: 'dud',
  },
  {
    law: 'on `grid=4` every slot is down',
    attributes: 'grid=4 time=3/4',
    lines: 'bar 1\n  1-3: x x x',
    strokes: 'ddd',
  },
  {
    law: 'a pickup counts as the end of a full bar',
    attributes: 'grid=8 time=3/8',
    lines: 'pickup\n  2-3: x x\nbar 1\n  1-3: x x x',
    bar: 0,
    strokes: 'ud',
  },
  {
    law: 'a cut on the grid follows the grid',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 2: x x${REST}`,
    strokes: 'dd',
    groups: [],
  },
  {
    law: 'a cut in four is the grid',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 4: x x x x${REST}`,
    strokes: 'dudu',
    groups: [],
  },
  {
    law: 'a cut that leaves the grid alternates by part',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 3: x x x${REST}`,
    strokes: 'dud',
    groups: [[0, 3360, 3]],
  },
  {
    law: '`E5 - E5` is down, up',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 3: E5 - E5${REST}`,
    strokes: 'du',
    groups: [[0, 3360, 3]],
  },
  { law: '`. . E5` is up', attributes: TWO_4, lines: `bar 1\n  1 in 3: . . E5${REST}`, strokes: 'u' },
  {
    law: 'a middle part stays with its place',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 3: . x x${REST}`,
    strokes: 'ud',
  },
  {
    law: 'the last of five after a hold',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 5: x x x - x${REST}`,
    strokes: 'dudu',
  },
  {
    law: 'the last of five after a stroke',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 5: x x x x x${REST}`,
    strokes: 'dudud',
  },
  {
    law: 'an even number of parts has no exception',
    attributes: TWO_4,
    lines: `bar 1\n  1 in 6: x x x x . x${REST}`,
    strokes: 'duduu',
  },
  {
    law: 'a bracket in one slot starts with the stroke of that slot',
    attributes: TWO_4,
    lines: `bar 1\n  1: x (x x) x x${REST}`,
    strokes: 'd ud d u',
    groups: [[840, 840, 2]],
  },
  {
    law: 'three in two slots from a down',
    attributes: TWO_4,
    lines: `bar 1\n  1: x x (x x x)2${REST}`,
    strokes: 'du dud',
    groups: [[1680, 1680, 3]],
  },
  {
    law: 'three in two slots from an up, the last after a hold',
    attributes: TWO_4,
    lines: `bar 1\n  1: x (E5 - E5)2 x${REST}`,
    strokes: 'd ud u',
    groups: [[840, 1680, 3]],
  },
  {
    law: 'a bracket on the grid follows the grid',
    attributes: TWO_4,
    lines: `bar 1\n  1: (x x)2 x x${REST}`,
    strokes: 'dudu',
    groups: [],
  },
  {
    law: 'a cut over beats whose parts divide evenly is one cut a beat',
    attributes: TWO_4,
    lines: 'bar 1\n  1-2 in 6: x x x x x x',
    strokes: 'dud dud',
    groups: [
      [0, 3360, 3],
      [3360, 3360, 3],
    ],
  },
  {
    law: '`1-4 in 12` is four `in 3`',
    attributes: 'grid=8',
    lines: 'bar 1\n  1-4 in 12: x x x E5 - E5 . . x x x x',
    strokes: 'dud du u dud',
    groups: [
      [0, 3360, 3],
      [3360, 3360, 3],
      [6720, 3360, 3],
      [10080, 3360, 3],
    ],
  },
  {
    law: 'a cut that does not divide among its beats is one group',
    attributes: TWO_4,
    lines: 'bar 1\n  1-2 in 3: x x x',
    strokes: 'dud',
    groups: [[0, 6720, 3]],
  },
  {
    law: '`in 1` over two beats is no group',
    attributes: TWO_4,
    lines: 'bar 1\n  1-2 in 1: x',
    strokes: 'd',
    groups: [],
  },
  {
    law: 'a dotted beat `in 2` on a sixteenth grid leaves no group',
    attributes: 'grid=16 time=6/8 count=2',
    lines: 'bar 1\n  1 in 2: x x\n  2 in 1: x',
    strokes: 'du d',
    groups: [],
  },
  {
    law: 'a cut at an odd slot starts with an up',
    attributes: 'grid=8 time=3/8',
    lines: 'bar 1\n  1: x\n  2 in 3: x x x\n  3: x',
    strokes: 'd udu d',
  },
  {
    law: 'two in a dotted beat that starts on an odd slot',
    attributes: 'grid=8 time=6/8 count=2',
    lines: 'bar 1\n  1: x x x\n  2 in 2: x x',
    strokes: 'dud ud',
    groups: [[5040, 5040, 2]],
  },
  {
    law: 'a cut in two on a quarter grid leaves it',
    attributes: 'grid=4 time=2/4',
    lines: 'bar 1\n  1 in 2: x x\n  2: x',
    strokes: 'du d',
    groups: [[0, 3360, 2]],
  },
  {
    law: 'a bracket over the edge of a beat starts with the stroke of its slot',
    attributes: 'grid=8 time=2/4',
    lines: 'bar 1\n  1-2: x (x x x)2 x',
    strokes: 'd udu u',
    groups: [[1680, 3360, 3]],
  },
  {
    law: '`down`: every stroke down',
    attributes: `${TWO_4} stroke=down`,
    lines: `bar 1\n  1: x E5 x x${REST}`,
    strokes: 'dddd',
  },
  {
    law: 'in `down` too `u:` overrides',
    attributes: `${TWO_4} stroke=down`,
    lines: `bar 1\n  1: x u:E5 x x${REST}`,
    strokes: 'dudd',
  },
  {
    law: '`pluck`: no direction',
    attributes: `${TWO_4} stroke=pluck`,
    lines: `bar 1\n  1: E5 x E5 .${REST}`,
    strokes: 'ppp',
  },
  {
    law: '`d:` or `u:` makes a brushed stroke of it',
    attributes: `${TWO_4} stroke=pluck`,
    lines: `bar 1\n  1: d:E5 u:E5 E5 .${REST}`,
    strokes: 'dup',
  },
  {
    law: 'an unstruck action has none',
    attributes: TWO_4,
    lines: `bar 1\n  1: 5@3 h:7@3 p:5@3 s:7@3${REST}`,
    strokes: 'dnnn',
  },
  {
    law: 'a `from` line sets the hand',
    attributes: TWO_4,
    lines: `bar 1\n  1: x x x x${REST}\nfrom 2 stroke down\nbar 2\n  1: x x x x${REST}`,
    bar: 2,
    strokes: 'dddd',
  },
]

describe('the striking hand', () => {
  it.each(HANDS)('$law', ({ attributes, lines, bar = 1, strokes, groups }) => {
    const read = barOf(readSound({ attributes, lines }), bar)
    const struck = read.events.map((event) => (event.kind === 'rest' ? '' : (event.stroke ?? 'none')[0]))
    expect(struck.join('')).toBe(strokes.replaceAll(' ', ''))
    if (groups !== undefined) expect(read.groups.map(({ at, length, parts }) => [at, length, parts])).toEqual(groups)
  })
})
