import { readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { barOf, EM7, hold, lessonAround, readSound } from './sentences.ts'

const X = 'x down on 6,5,4,3,2,1'
const XU = 'x up on 6,5,4,3,2,1'
const BEATS = '  1: x x\n  2: x x'

hold('bars and beats', [
  {
    law: '`pickup`: the beats before bar 1, from its own 0',
    lines: `pickup\n  2: x Em7\nbar 1\n${BEATS}`,
    bars: { 0: ['0+1680 x down on 5,4,3,2,1', `1680+1680 up ${EM7}`] },
  },
  { law: 'a pickup without gaps', lines: `⟦pickup-gap:pickup⟧\n  1: x x\nbar 1\n${BEATS}` },
  { law: 'a pickup of all beats is a bar', lines: `⟦pickup-full:pickup⟧\n${BEATS}\nbar 1\n${BEATS}` },
  { law: 'a pickup takes settings', lines: `pickup grid 4\n  2: x\nbar 1\n${BEATS}`, bars: { 0: [`0+3360 ${X}`] } },
  { law: 'a pickup comes first', lines: `bar 1\n${BEATS}\n⟦bar-out-of-order:pickup⟧\n  2: x x` },
  { law: 'there is one pickup', lines: `pickup\n  2: x x\n⟦duplicate-bar:pickup⟧\n  2: x x\nbar 1\n${BEATS}` },
  { law: 'numbers count up from 1', lines: `bar ⟦bar-out-of-order:2⟧\n${BEATS}` },
  { law: 'bar 0 is none', lines: `bar ⟦bad-bar-number:0⟧\n${BEATS}` },
  { law: 'without gaps', lines: `bar 1\n${BEATS}\nbar ⟦bar-out-of-order:3⟧\n${BEATS}` },
  { law: 'each once', lines: `bar 1\n${BEATS}\nbar ⟦duplicate-bar:1⟧\n${BEATS}` },
  { law: 'a bar needs its number', lines: `⟦bad-bar-number:bar⟧\n${BEATS}` },
  { law: 'a line names at most 512 bars', lines: `bar 1\n${BEATS}\nbar ⟦bad-bar-number:2-514⟧ = bar 1` },
  { law: '512 are allowed', lines: `bar 1\n${BEATS}\nbar 2-513 = bar 1` },
  { law: 'a part has at most 99,999 bars', lines: `bar 1\n${BEATS}\nbar ⟦bad-bar-number:100000⟧\n${BEATS}` },
  { law: 'exactly one sign for each slot: one too few', lines: 'bar 1\n  1: ⟦wrong-slot-count:x⟧\n  2: x x' },
  { law: 'one too many', lines: 'bar 1\n  1: ⟦wrong-slot-count:x x x⟧\n  2: x x' },
  { law: 'a beat that is missing, at the bar line', lines: '⟦missing-beat:bar 1⟧\n  2: x x' },
  { law: 'one finding a bar, however many are missing', lines: `⟦missing-beat:bar 1⟧\nbar 2\n${BEATS}` },
  { law: 'a beat twice', lines: 'bar 1\n  1: x x\n  2: x x\n  ⟦duplicate-beat:2:⟧ x x' },
  { law: 'a beat in two lines', lines: 'bar 1\n  1-2: x x x x\n  ⟦overlapping-beats:2:⟧ x x' },
  { law: 'a beat the bar has not', lines: 'bar 1\n  1: x x\n  2: x x\n  ⟦no-such-beat:3⟧: x x' },
  { law: 'a beat without signs', lines: 'bar 1\n  1: x x\n  ⟦empty-beat:2:⟧' },
  { law: 'a beat outside a bar', lines: `⟦beat-outside-bar:1: x x⟧\nbar 1\n${BEATS}` },
  {
    law: 'beats may stand in any order',
    lines: 'bar 1\n  2: Em7 -\n  1: x x',
    bars: { 1: ['0+1680 x down on 5,4,3,2,1', '1680+1680 x up on 5,4,3,2,1', `3360+3360 down ${EM7}`] },
  },
  {
    law: '`3-4:` two beats in one line',
    lines: 'bar 1\n  1-2: x x x x',
    bars: { 1: [`0+1680 ${X}`, `1680+1680 ${XU}`, `3360+1680 ${X}`, `5040+1680 ${XU}`] },
  },
  { law: '`|` may stand between beats', lines: 'bar 1\n  1-2: x x | x x' },
  { law: 'and must stand right', lines: 'bar 1\n  1-2: x ⟦misplaced-beat-bar:|⟧ x x x' },
  { law: 'not inside one beat', lines: 'bar 1\n  1: x ⟦misplaced-beat-bar:|⟧ x\n  2: x x' },
  { law: 'not at the end', lines: 'bar 1\n  1: x x\n  2: x x ⟦misplaced-beat-bar:|⟧' },
  { law: 'indentation means nothing, blank lines are free', lines: 'bar 1\n\n      1: x x\n2: x x' },
  {
    law: '`//` starts a comment, at the start or after a space',
    lines: '// words\nbar 1 // the first\n  1: x x // ? ?\n  2: x x',
  },
  { law: 'a line that is none', lines: `⟦unreadable-line:hello there⟧\nbar 1\n${BEATS}` },
  { law: 'a word two letters off', lines: `⟦unreadable-line:bra⟧ 1\n${BEATS}` },
])

hold('one mistake, one finding', [
  { law: 'a shape that is none, held, slid and hammered', lines: 'bar 1\n  1: ⟦unknown-shape:Em8⟧ -\n  2: h:9@3 s:.' },
  {
    law: 'a wrong number of signs, then holds',
    lines: 'bar 1\n  1: x x\n  2: ⟦wrong-slot-count:x⟧\nbar 2\n  1: - h:9@3\n  2: x x',
  },
  { law: 'a bar that cannot be numbered', lines: 'bar ⟦bad-bar-number:one⟧\n  1: x x\n  2: x x\nrepeat 1-1' },
  { law: 'a bar whose time cannot be read', lines: 'bar 1 time ⟦bad-setting:5/5⟧\n  1: x x x\n  7: x' },
  {
    law: 'every mistake of a line',
    lines: 'bar 1\n  1: ⟦unknown-shape:Em8⟧ Em7⟦no-such-string:@9⟧\n  2: ⟦unreadable-stroke:?⟧ ⟦fret-needs-string:12⟧',
  },
  { law: 'columns count in UTF-16 units', lines: 'bar 1\n  1: ⟦unreadable-stroke:🎵⟧ ⟦unreadable-stroke:?⟧\n  2: x x' },
  { law: '`//` inside a sign is no comment', lines: 'bar 1\n  1: ⟦unknown-shape:x//⟧ x\n  2: x x' },
])

hold('cuts and brackets', [
  {
    law: '`2 in 3:` cuts the beat into equal parts',
    lines: 'bar 1\n  1: x x\n  2 in 3: Em7 x Em7',
    bars: {
      1: [
        '0+1680 x down on 5,4,3,2,1',
        '1680+1680 x up on 5,4,3,2,1',
        `3360+1120 down ${EM7}`,
        '4480+1120 x up on 5,4,3,2,1',
        `5600+1120 down ${EM7}`,
      ],
    },
  },
  {
    law: '`1-2 in 3:` likewise',
    lines: 'bar 1\n  1-2 in 3: x . x',
    bars: { 1: [`0+2240 ${X}`, '2240+2240 rest', `4480+2240 ${XU}`] },
  },
  { law: '`1-2 in 1:` likewise', lines: 'bar 1\n  1-2 in 1: x', bars: { 1: [`0+6720 ${X}`] } },
  { law: 'at most 16 parts a beat', lines: 'bar 1\n  ⟦cut-does-not-divide:1 in 20:⟧ x\n  2: x x' },
  { law: '16 parts are allowed', lines: `bar 1\n  1 in 16:${' x'.repeat(16)}\n  2: x x` },
  { law: '32 parts over two beats are allowed', lines: `bar 1\n  1-2 in 32:${' x'.repeat(32)}` },
  { law: 'the parts must divide it', lines: 'bar 1\n  ⟦cut-does-not-divide:1 in 9:⟧ x\n  2: x x' },
  { law: 'no parts are none', lines: 'bar 1\n  ⟦cut-does-not-divide:1 in 0:⟧ x\n  2: x x' },
  { law: 'a cut wants its number of signs', lines: 'bar 1\n  1 in 3: ⟦wrong-slot-count:x x⟧\n  2: x x' },
  {
    law: 'signs in round brackets share one slot',
    lines: 'bar 1\n  1: (x Em7) x\n  2: . .',
    bars: { 1: ['0+840 x down on 5,4,3,2,1', `840+840 up ${EM7}`, '1680+1680 x up on 5,4,3,2,1', '3360+3360 rest'] },
  },
  {
    law: 'or as many slots as the figure after the bracket says',
    lines: 'bar 1\n  1: (x x x)2\n  2: . .',
    bars: { 1: [`0+1120 ${X}`, `1120+1120 ${XU}`, `2240+1120 ${X}`, '3360+3360 rest'] },
  },
  { law: 'a bracket counts its slots', lines: 'bar 1\n  1: ⟦wrong-slot-count:(x x x)2 x⟧\n  2: . .' },
  {
    law: 'its signs must share the slots evenly',
    lines: 'bar 1\n  1: x ⟦cut-does-not-divide:(x x x x x x x x x)⟧\n  2: . .',
  },
  { law: 'a bracket that is not closed', lines: 'bar 1\n  1: x ⟦unreadable-stroke:(x⟧\n  2: . .' },
  { law: 'an empty bracket', lines: 'bar 1\n  1: x ⟦unreadable-stroke:()⟧\n  2: . .' },
  {
    law: 'a hold inside a bracket',
    lines: 'bar 1\n  1: Em7 (- x)\n  2: . .',
    bars: { 1: [`0+2520 down ${EM7}`, '2520+840 x down on 5,4,3,2,1', '3360+3360 rest'] },
  },
])

hold('other ways and remarks', [
  { law: 'an `or` must fill the same time', lines: `bar 1\n${BEATS}\n  or 2: ⟦wrong-slot-count:x⟧` },
  { law: 'a beat that is not cut free in the main line', lines: 'bar 1\n  1-2 in 1: x\n  ⟦bad-alternative:or 2: x x⟧' },
  { law: '`or` outside a bar', lines: `⟦beat-outside-bar:or 1: x x⟧\nbar 1\n${BEATS}` },
  {
    law: 'what follows is read from the main line',
    lines: 'bar 1\n  1: x x\n  2: . Em7\n  or 2: . .\nbar 2\n  1: - x\n  2: x x',
    bars: { 1: ['0+1680 x down on 5,4,3,2,1', '1680+1680 x up on 5,4,3,2,1', '3360+1680 rest', `5040+3360 up ${EM7}`] },
  },
  {
    law: 'and not from the `or`',
    lines: 'bar 1\n  1: x x\n  2: . .\n  or 2: . Em7\nbar 2\n  1: ⟦nothing-to-hold:-⟧ x\n  2: x x',
  },
  { law: 'an `or` of a bar may act on what the main line left', lines: 'bar 1\n  1: x 5@3\n  2: x x\n  or 2: h:7@3 -' },
  {
    law: 'an `or` cannot end what rings in the main line',
    lines: 'bar 1\n  1: 5@3_ 3@6\n  2: 3@6 5@3\n  or 2: 7@3 .',
    bars: { 1: ['0+1680 down 5@3~5040 ring', '1680+1680 up 3@6', '3360+1680 down 3@6', '5040+1680 up 5@3'] },
  },
  { law: 'a remark at a beat the bar has not', lines: `bar 1\n${BEATS}\n  ⟦no-such-beat:say 3: words⟧` },
  { law: 'a remark outside a bar', lines: `⟦beat-outside-bar:say: words⟧\nbar 1\n${BEATS}` },
])

hold('settings of bars', [
  {
    law: '`bar 2 time 3/4 grid 4`: for this bar alone',
    lines: `bar 1\n${BEATS}\nbar 2 time 3/4 grid 4\n  1-3: x x x\nbar 3\n${BEATS}`,
    bars: { 2: [`0+3360 ${X}`, `3360+3360 ${X}`, `6720+3360 ${X}`] },
  },
  {
    law: '`from 2`: until the next',
    lines: `bar 1\n${BEATS}\nfrom 2 grid 4\nbar 2\n  1: x\n  2: x\nbar 3\n  1: x\n  2: x\nfrom 4 grid 8\nbar 4\n${BEATS}`,
  },
  { law: 'it stands above that bar', lines: `from ⟦bad-from:2⟧ tempo 100\nbar 1\n${BEATS}` },
  { law: 'it must set something', lines: `⟦bad-from:from 1⟧\nbar 1\n${BEATS}` },
  { law: 'what can be read', lines: `from 1 tempo ⟦bad-from:900⟧\nbar 1\n${BEATS}` },
  { law: 'a setting of a bar that is none', lines: `bar 1 ⟦unknown-setting:tme⟧ 3/4\n${BEATS}` },
  { law: 'a value that is none', lines: `bar 1 tempo ⟦bad-setting:19⟧\n${BEATS}` },
  { law: 'a setting twice', lines: `bar 1 tempo 90 ⟦repeated-setting:tempo⟧ 100\n${BEATS}` },
  {
    law: 'the slot may not be longer than the beat',
    lines: '⟦bad-grid:bar 1 time 4/8 grid 4⟧\n  1: x\n  2: x\n  3: x\n  4: x',
  },
  { law: 'a section without its bar', lines: `bar 1\n${BEATS}\n⟦unreadable-line:section Chorus⟧` },
])

hold('bounds', [
  { law: '1,000 characters a line', lines: `bar 1\n${BEATS}\n  say: ${'a'.repeat(995)}⟦line-too-long:a⟧` },
  { law: 'exactly 1,000 are allowed', lines: `bar 1\n${BEATS}\n  say: ${'a'.repeat(995)}` },
  {
    law: 'a sign of 64 characters is read',
    lines: `bar 1\n  1: ${'7@5+7@4+7@3+7@2+7@1+7@6'} x\n  2: ⟦unreadable-stroke:${'?'.repeat(64)}⟧ x`,
  },
])

describe('what a bar keeps', () => {
  it('its alternatives in order, each with its time, groups and events', () => {
    const { alternatives } = barOf(readSound({ lines: `bar 1\n${BEATS}\n  or 2 in 3: x x x\n  or 2: . Em7` }), 1)
    expect(alternatives).toMatchObject([
      {
        at: 3360,
        length: 3360,
        groups: [{ at: 3360, length: 3360, parts: 3 }],
        events: [
          { at: 3360, duration: 1120, stroke: 'down' },
          { at: 4480, stroke: 'up' },
          { at: 5600, stroke: 'down' },
        ],
      },
      {
        at: 3360,
        length: 3360,
        groups: [],
        events: [
          { kind: 'rest', at: 3360, duration: 1680 },
          { kind: 'strike', at: 5040, duration: 1680, stroke: 'up' },
        ],
      },
    ])
  })

  it('its remarks, as typed, at their beat or for the bar', () => {
    const lines = `bar 1\n${BEATS}\n  say 2: let the “ninth” go — at once\n  say: whole bar, see http://here`
    expect(barOf(readSound({ lines }), 1).remarks.map(({ at, text }) => [at, text])).toEqual([
      [3360, 'let the “ninth” go — at once'],
      [null, 'whole bar, see http://here'],
    ])
  })

  it("a remark in a pickup from the pickup's own start", () => {
    const lines = `pickup\n  2: x x\n  say 2: listen\nbar 1\n${BEATS}`
    expect(barOf(readSound({ lines }), 0).remarks[0]!.at).toBe(0)
  })

  it('its section, key, tempo, feel and time', () => {
    const lesson = readSound({
      settings: 'tempo: 92\nkey: E minor',
      lines: `section Verse one\nbar 1\n${BEATS}\nfrom 2 key G major tempo 100 feel swing 8\nsection Chorus\nbar 2\n${BEATS}\nbar 3 time 3/8 feel straight\n  1-3: x x x\nbar 4\n${BEATS}`,
    })
    const brief = [1, 2, 3, 4].map((number) => {
      const { section, key, tempoBpm, feel, metre, start, length } = barOf(lesson, number)
      return [section, `${key.tonic} ${key.mode}`, tempoBpm, feel, `${metre.count}/${metre.unit}`, start, length]
    })
    expect(brief).toEqual([
      ['Verse one', 'E minor', 92, 'straight', '2/4', 0, 6720],
      ['Chorus', 'G major', 100, 'swing 8', '2/4', 6720, 6720],
      [null, 'G major', 100, 'straight', '3/8', 13440, 5040],
      [null, 'G major', 100, 'swing 8', '2/4', 18480, 6720],
    ])
  })

  it("beats of the numerator's unit, or dotted ones by `count` in the part's own time", () => {
    const lesson = readSound({
      attributes: 'grid=8 time=6/8 count=2',
      lines: 'bar 1\n  1: x x x\n  2: x x x\nbar 2 time 3/8\n  1-3: x x x',
    })
    expect([1, 2].map((number) => barOf(lesson, number).beatTicks)).toEqual([5040, 1680])
    const twelve = readSound({ attributes: 'grid=8 time=12/8 count=4', lines: 'bar 1\n  1-4: x x x x x x x x x x x x' })
    expect(barOf(twelve, 1).beatTicks).toBe(5040)
  })

  it('signs in other typography, read as their plain signs without moving columns', () => {
    const lines = 'bar 1\n  1: Em7’ –\n  2: x x'
    const { findings } = readLesson({ path: 'tag.md', text: lessonAround({ lines }) })
    // `’` is the short mark and the long dash a hold, which excludes it: one finding, at the dash.
    expect(findings.map(({ code, place }) => [code, place.column, place.endColumn])).toEqual([
      ['conflicting-marks', 11, 12],
    ])
  })

  it('at most 200 findings of one block, and one that says so', () => {
    const { findings } = readLesson({
      path: 'tag.md',
      text: lessonAround({ lines: `bar 1\n${BEATS}\n${'repeat\n'.repeat(250)}` }),
    })
    expect(findings.length).toBe(201)
    expect(findings.at(-1)!.code).toBe('too-many-findings')
    expect(findings.filter(({ code }) => code === 'bad-repeat').length).toBe(200)
  })
})
