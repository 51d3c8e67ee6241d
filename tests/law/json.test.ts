import { checkLesson, readLesson } from '@barwise/parser'
import { lessonJson } from '@barwise/render'
import { expect, it } from 'vitest'

const LESSON = `---
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

// Open strings of a guitar as MIDI numbers, E2 = 40; written an octave above what sounds; E4 is MIDI 64 (scientific pitch).
const struck = (string: number, fret: number, finger: number | null, midi: number, written: string): object => ({
  string,
  fret,
  finger,
  midi,
  written,
  from: 'struck',
})
const RINGS = { ringsTo: 5880 }

/** The score of the lesson, worked out by hand; every key in its place. */
const SCORE = {
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
                struck(5, 7, 1, 52, 'E4'),
                struck(4, 9, 3, 59, 'B4'),
                struck(3, 7, 1, 62, 'D5'),
                struck(2, 8, 2, 67, 'G5'),
                struck(1, 7, 1, 71, 'B5'),
              ],
              marks: [],
              palmMuted: false,
              rolled: false,
            },
            { at: 840, duration: 840, kind: 'scratch', stroke: 'up', marks: [], palmMuted: false },
            { at: 1680, duration: 840, kind: 'rest' },
            {
              at: 2520,
              duration: 840,
              kind: 'strike',
              stroke: 'up',
              shape: 'Em7',
              voice: 1,
              notes: [struck(2, 8, 2, 67, 'G5'), struck(1, 7, 1, 71, 'B5')],
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
              // String 5 is struck again at 5040, where this event ends; the others ring on to the scratch.
              notes: [
                struck(5, 12, 2, 57, 'A4'),
                { ...struck(4, 11, 1, 61, 'C#5'), ...RINGS },
                { ...struck(3, 12, 3, 67, 'G5'), ...RINGS },
                { ...struck(2, 12, 3, 71, 'B5'), ...RINGS },
                { ...struck(1, 12, 3, 76, 'E6'), ...RINGS },
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
              notes: [struck(5, 7, 1, 52, 'E4')],
              marks: [],
              palmMuted: true,
              rolled: false,
            },
            { at: 5880, duration: 840, kind: 'scratch', stroke: 'up', marks: [], palmMuted: false },
          ],
          alternatives: [],
          remarks: [],
        },
      ],
    },
  ],
}

it('a lesson becomes its score as JSON, every key in its order', () => {
  const source = { path: 'tag.md', text: LESSON }
  const read = readLesson(source)
  expect(read.findings).toEqual([])
  const checked = checkLesson(read.lesson, [source])
  const { findings, ...score } = JSON.parse(lessonJson(checked.lesson, []))
  expect(JSON.stringify(score, null, 1)).toBe(JSON.stringify(SCORE, null, 1))
  expect(findings).toEqual([])
})

it('a finding is written flat: code, severity, words, place', () => {
  const source = { path: 'lessons/tag.md', text: LESSON.replace('  1: Em7 x .', '  1: Em7 x') }
  const { lesson, findings } = readLesson(source)
  const [finding] = JSON.parse(lessonJson(lesson, findings)).findings
  expect(Object.keys(finding)).toEqual([
    'code',
    'severity',
    'message',
    'help',
    'file',
    'line',
    'column',
    'endLine',
    'endColumn',
  ])
  expect(finding).toMatchObject({
    code: 'wrong-slot-count',
    severity: 'error',
    message: 'beat 1 has 3 signs, a sixteenth grid needs 4',
    file: 'lessons/tag.md',
    line: 14,
    column: 6,
    endLine: 14,
    endColumn: 20,
  })
})

it('the example of a printed finding is worded as it stands in the language', () => {
  const text = `---\ntitle: Ferry Queue\n---\n\n:::shapes\nEm7 x 7 9 7 8 7\n:::\n\n:::part{#groove}\nbar 1\n  1: . . . .\n  2: x Em7 x\n  3: . . . .\n  4: . . . .\n:::\n`
  const { findings } = readLesson({ path: 'lessons/ferry-queue.md', text })
  expect(findings).toMatchObject([
    {
      code: 'wrong-slot-count',
      severity: 'error',
      message: 'beat 2 has 3 signs, a sixteenth grid needs 4',
      help: 'add one sign (`-` holds, `.` is silence), or write `2 in 3:` for a triplet',
      place: { file: 'lessons/ferry-queue.md', line: 12, column: 6, endLine: 12, endColumn: 13 },
    },
  ])
})

it('strings, ringing and given fingers are left out where they do not apply', () => {
  const text = LESSON.replace('1: Em7 x . Em7@1-2>', '1: x@4-5 x 7@3(2) .')
  const { lesson } = readLesson({ path: 'tag.md', text })
  const [named, plain, note] = JSON.parse(lessonJson(lesson, [])).parts[0].bars[0].events
  expect(named).toEqual({
    at: 0,
    duration: 840,
    kind: 'scratch',
    stroke: 'down',
    strings: [5, 4],
    marks: [],
    palmMuted: false,
  })
  expect('strings' in plain).toBe(false)
  expect(note.notes).toEqual([{ string: 3, fret: 7, finger: 2, midi: 62, written: 'D5', from: 'struck', given: true }])
})

it('a dead string has no fret, midi or written pitch; an unstruck action no stroke', () => {
  const text = LESSON.replace('1: Em7 x . Em7@1-2>', '1: 5@3+x@5 h:7@3 s:. .')
  const { lesson } = readLesson({ path: 'tag.md', text })
  const [dead, hammered] = JSON.parse(lessonJson(lesson, [])).parts[0].bars[0].events
  expect(dead.notes[0]).toEqual({ string: 5, fret: null, finger: null, midi: null, written: null, from: 'dead' })
  expect(hammered).toMatchObject({
    stroke: null,
    marks: ['slide-off'],
    notes: [{ string: 3, fret: 7, from: 'hammered' }],
  })
})

it('pitches of a capo sound higher and are written as fingered', () => {
  // A capo on fret 3 raises MIDI 52 (E3) to 55 (G3); the page keeps E4.
  const { lesson } = readLesson({ path: 'tag.md', text: LESSON.replace('tempo: 92', 'tempo: 92\ncapo: 3') })
  const score = JSON.parse(lessonJson(lesson, []))
  expect([score.capo, score.frets, score.tuning[5]]).toEqual([3, 22, 40])
  expect(score.parts[0].bars[0].events[0].notes[0]).toMatchObject({ fret: 7, midi: 55, written: 'E4' })
})
