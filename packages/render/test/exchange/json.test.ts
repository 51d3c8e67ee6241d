import { checkLesson, type Finding, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { lessonJson } from '../../src/exchange/json.ts'

const TEXT = `---
title: Tag
tempo: 92
key: E minor
---

:::shapes
Em7      x 7 9 7 8 7        fingers x 1 3 1 2 1
A9       x 12 11 12 12 12   fingers x 2 1 3 3 3
:::

:::part{#tag title="Tag" grid=16 time=2/4}
bar 1 chords Em7 - A9 -
  1: Em7 x . Em7@1-2>
  2: A9_ - m:7@5 x
:::
`

const jsonOf = (text: string, findings: readonly Finding[] = []): string => {
  const source = { path: 'tag.md', text }
  return lessonJson(checkLesson(readLesson(source).lesson, [source]).lesson, findings)
}

const note = (string: number, fret: number, finger: number, midi: number, written: string) => ({
  string,
  fret,
  finger,
  midi,
  written,
  from: 'struck',
})
const plain = { marks: [], palmMuted: false }

/** The score of the lesson above, every key in the order it has to be written. */
const EXPECTED = {
  format: 1,
  title: 'Tag',
  subtitle: null,
  level: null,
  language: 'en',
  instrument: 'guitar',
  tuning: [64, 59, 55, 50, 45, 40],
  capo: 0,
  scale: 648,
  frets: 22,
  hand: 'adult',
  touch: 'full',
  goal: null,
  ticksPerQuarter: 3360,
  shapes: [
    {
      name: 'Em7',
      frets: [7, 8, 7, 9, 7, null],
      fingers: [1, 2, 1, 3, 1, null],
      label: 'Em7',
      implied: false,
      verdict: 'exact',
      bass: 'root',
      tones: ['E', 'G', 'B', 'D'],
    },
    {
      name: 'A9',
      frets: [12, 12, 12, 11, 12, null],
      fingers: [3, 3, 3, 1, 2, null],
      label: 'A9',
      implied: false,
      verdict: 'exact',
      bass: 'root',
      tones: ['A', 'C#', 'E', 'G', 'B'],
    },
  ],
  parts: [
    {
      id: 'tag',
      title: 'Tag',
      stroke: 'alternate',
      count: null,
      touch: 'full',
      repeats: [],
      bars: [
        {
          number: 1,
          start: 0,
          length: 6720,
          time: '2/4',
          grid: 16,
          key: 'E minor',
          tempo: 92,
          feel: 'straight',
          section: null,
          sameAs: null,
          chords: [
            { at: 0, symbol: 'Em7' },
            { at: 3360, symbol: 'A9' },
          ],
          groups: [],
          events: [
            {
              at: 0,
              duration: 840,
              kind: 'strike',
              stroke: 'down',
              shape: 'Em7',
              voice: 1,
              notes: [
                note(5, 7, 1, 52, 'E4'),
                note(4, 9, 3, 59, 'B4'),
                note(3, 7, 1, 62, 'D5'),
                note(2, 8, 2, 67, 'G5'),
                note(1, 7, 1, 71, 'B5'),
              ],
              ...plain,
              rolled: false,
            },
            { at: 840, duration: 840, kind: 'scratch', stroke: 'up', ...plain },
            { at: 1680, duration: 840, kind: 'rest' },
            {
              at: 2520,
              duration: 840,
              kind: 'strike',
              stroke: 'up',
              shape: 'Em7',
              voice: 1,
              notes: [note(2, 8, 2, 67, 'G5'), note(1, 7, 1, 71, 'B5')],
              marks: ['accent'],
              palmMuted: false,
              rolled: false,
            },
            {
              at: 3360,
              duration: 1680,
              kind: 'strike',
              stroke: 'down',
              shape: 'A9',
              voice: 1,
              notes: [
                note(5, 12, 2, 57, 'A4'),
                { ...note(4, 11, 1, 61, 'C#5'), ringsTo: 5880 },
                { ...note(3, 12, 3, 67, 'G5'), ringsTo: 5880 },
                { ...note(2, 12, 3, 71, 'B5'), ringsTo: 5880 },
                { ...note(1, 12, 3, 76, 'E6'), ringsTo: 5880 },
              ],
              marks: ['ring'],
              palmMuted: false,
              rolled: false,
            },
            {
              at: 5040,
              duration: 840,
              kind: 'strike',
              stroke: 'down',
              shape: null,
              voice: 1,
              notes: [note(5, 7, 1, 52, 'E4')],
              marks: [],
              palmMuted: true,
              rolled: false,
            },
            { at: 5880, duration: 840, kind: 'scratch', stroke: 'up', ...plain },
          ],
          alternatives: [],
          remarks: [],
        },
      ],
    },
  ],
  findings: [],
}

describe('a lesson as JSON', () => {
  it('has every key of the score, in order, byte for byte', () => {
    expect(jsonOf(TEXT)).toBe(`${JSON.stringify(EXPECTED, null, 2)}\n`)
  })

  it('is the same on a second run', () => {
    expect(jsonOf(TEXT)).toBe(jsonOf(TEXT))
  })

  it('lists repeats, endings, groups, alternatives and remarks', () => {
    const text = `---
title: Tag
---

:::part{#tag time=2/4 grid=8}
bar 1
  1: 5@5 5@5
  2 in 3: 5@5 5@5 5@5
  or 2: 5@5(1) x@4-5
  say 2: even
bar 2
  1-2: 5@5 - - -
bar 3 = bar 2
repeat 1-2
ending 1 bars 2-2
ending 2 bars 3-3
:::
`
    const { parts } = JSON.parse(jsonOf(text))
    expect(parts[0].repeats).toEqual([
      {
        from: 1,
        to: 2,
        times: 2,
        endings: [
          { numbers: [1], from: 2, to: 2 },
          { numbers: [2], from: 3, to: 3 },
        ],
      },
    ])
    const [first, , third] = parts[0].bars
    expect(first.groups).toEqual([{ at: 3360, length: 3360, parts: 3 }])
    expect(first.remarks).toEqual([{ at: 3360, text: 'even' }])
    expect(first.alternatives[0]).toMatchObject({ at: 3360, length: 3360, groups: [] })
    expect(first.alternatives[0].events[0].notes[0]).toMatchObject({ finger: 1, given: true })
    expect(first.alternatives[0].events[1].strings).toEqual([5, 4])
    expect(third.sameAs).toBe(2)
  })

  it('gives findings with their place', () => {
    const source = { path: 'tag.md', text: TEXT.replace('Em7 x . Em7@1-2>', 'Em7 x .') }
    const { lesson, findings } = readLesson(source)
    expect(JSON.parse(lessonJson(lesson, findings)).findings).toEqual([
      {
        code: 'wrong-slot-count',
        severity: 'error',
        message: findings[0]!.message,
        help: findings[0]!.help,
        file: 'tag.md',
        line: 14,
        column: 6,
        endLine: 14,
        endColumn: 13,
      },
    ])
  })
})
