import { readLesson, slotTicks, TICKS_PER_QUARTER } from '@barwise/parser'
import { describe, expect, it } from 'vitest'

interface Written {
  readonly law: string
  readonly settings?: string
  readonly shapes?: string
  /** The words after `bar 1`. */
  readonly bar?: string
  readonly sign: string
  readonly written: readonly string[]
  readonly midi?: readonly number[]
}

/** The notes of the one stroke of a lesson, highest string number first. */
function notesOf({ settings = '', shapes = '', bar = '', sign }: Omit<Written, 'law' | 'written'>) {
  const block = shapes === '' ? '' : `:::shapes\n${shapes}\n:::\n\n`
  const text = `---\ntitle: Tag\n${settings}\n---\n\n${block}:::part{#tag time=1/4 grid=4}\nbar 1${bar}\n  1: ${sign}\n:::\n`
  const { lesson, findings } = readLesson({ path: 'tag.md', text })
  expect(findings).toEqual([])
  const [event] = lesson.parts[0]!.bars[0]!.events
  return event?.kind === 'strike' ? event.notes : []
}

// MIDI numbers of scientific pitch: C4 is 60, A4 69. Degrees of chords and keys: common practice.
const NOTES: readonly Written[] = [
  { law: 'written C4 is string 5 fret 3, sounding MIDI 48', sign: '3@5', written: ['C4'], midi: [48] },
  { law: 'MIDI is open string, capo and fret', settings: 'capo: 2', sign: '3@5', written: ['C4'], midi: [50] },
  {
    law: 'a bass is written an octave above too',
    settings: 'instrument: bass',
    sign: '3@3',
    written: ['C3'],
    midi: [36],
  },
  { law: 'a ukulele as it sounds', settings: 'instrument: ukulele', sign: '0@3', written: ['C4'], midi: [60] },
  {
    law: 'a sharpened ninth by its degree',
    settings: 'key: Bb major',
    shapes: 'C7#9 x 3 2 3 4 x',
    sign: 'C7#9',
    written: ['C4', 'E4', 'Bb4', 'D#5'],
  },
  {
    law: 'a flattened ninth by its degree',
    settings: 'key: E major',
    shapes: 'D7b9 x 5 4 5 4 x',
    sign: 'D7b9',
    written: ['D4', 'F#4', 'C5', 'Eb5'],
  },
  {
    law: 'the label of the shape before the symbol in force',
    settings: 'key: E major',
    shapes: 'Gb 2 4 4 3 2 2',
    bar: ' chords F#',
    sign: 'Gb@6',
    written: ['Gb3'],
  },
  {
    law: 'else the symbol in force: a flat root',
    settings: 'key: E major',
    bar: ' chords Gb7',
    sign: '4@4',
    written: ['Gb4'],
  },
  {
    law: 'else the symbol in force: a sharp root',
    settings: 'key: Db major',
    bar: ' chords F#7',
    sign: '4@4',
    written: ['F#4'],
  },
  { law: 'a degree of a sharp key', settings: 'key: F# major', sign: '8@5', written: ['E#4'] },
  {
    law: 'a degree of a flat key, its octave by letter',
    settings: 'key: Gb major',
    sign: '2@5',
    written: ['Cb4'],
    midi: [47],
  },
  { law: 'the leading tone of A minor', settings: 'key: A minor', sign: '1@3', written: ['G#4'] },
  { law: 'the leading tone of D minor, a flat key', settings: 'key: D minor', sign: '2@2', written: ['C#5'] },
  { law: 'the leading tone of G minor', settings: 'key: G minor', sign: '4@4', written: ['F#4'] },
  { law: 'the leading tone of C minor', settings: 'key: C minor', sign: '2@5', written: ['B3'] },
  { law: 'otherwise flats in a flat key', settings: 'key: F major', sign: '4@4', written: ['Gb4'] },
  { law: 'otherwise sharps in a sharp key', settings: 'key: G major', sign: '3@3', written: ['A#4'] },
  { law: 'C major counts as a sharp key', settings: 'key: C major', sign: '4@5', written: ['C#4'] },
  { law: 'A minor counts as a sharp key', settings: 'key: A minor', sign: '3@3', written: ['A#4'] },
  {
    law: 'a moved shape by the side of a sharp key',
    shapes: 'Em7 x 7 9 7 8 7',
    sign: 'Em7^+2',
    written: ['F#4', 'C#5', 'E5', 'A5', 'C#6'],
  },
  {
    law: 'a moved shape by the side of a flat key',
    settings: 'key: Db major',
    shapes: 'Em7 x 7 9 7 8 7',
    sign: 'Em7^+2',
    written: ['Gb4', 'Db5', 'Fb5', 'Bbb5', 'Db6'],
  },
]

describe('pitch', () => {
  it.each(NOTES)('$law', ({ written, midi, ...lesson }) => {
    const notes = notesOf(lesson)
    expect(notes.map((note) => note.written)).toEqual(written)
    if (midi !== undefined) expect(notes.map((note) => note.midi)).toEqual(midi)
  })

  it('the highest fret is that of the neck without the capo', () => {
    const text = `---\ntitle: Tag\ncapo: 3\n---\n\n:::part{#tag time=2/4 grid=4}\nbar 1\n  1-2: 19@1 20@1\n:::\n`
    const { findings } = readLesson({ path: 'tag.md', text })
    expect(findings.map(({ code, place }) => [code, place.column])).toEqual([['fret-out-of-range', 13]])
  })
})

describe('time', () => {
  it('has 3360 ticks to the quarter note, and slots by the grid', () => {
    expect(TICKS_PER_QUARTER).toBe(3360)
    expect([4, 8, 16, 32].map((grid) => slotTicks(grid as 4))).toEqual([3360, 1680, 840, 420])
  })

  it.each([1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 15, 16])('a quarter divides by %d exactly', (parts) => {
    const signs = Array.from({ length: parts }, (_, index) => `${index}@1`).join(' ')
    const text = `---\ntitle: Tag\n---\n\n:::part{#tag time=1/4}\nbar 1\n  1 in ${parts}: ${signs}\n:::\n`
    const { lesson, findings } = readLesson({ path: 'tag.md', text })
    expect(findings).toEqual([])
    const { events } = lesson.parts[0]!.bars[0]!
    const length = 3360 / parts
    expect(events.map(({ at, duration }) => [at, duration])).toEqual(
      Array.from({ length: parts }, (_, index) => [index * length, length]),
    )
  })

  it.each([9, 11, 13, 0, 17])('what does not divide is an error, never a rounding: %d', (parts) => {
    const signs = Array.from({ length: Math.max(1, parts) }, () => 'x').join(' ')
    const text = `---\ntitle: Tag\n---\n\n:::part{#tag time=1/4}\nbar 1\n  1 in ${parts}: ${signs}\n:::\n`
    expect(readLesson({ path: 'tag.md', text }).findings.map(({ code }) => code)).toEqual(['cut-does-not-divide'])
  })
})
