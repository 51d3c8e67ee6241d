import { expect, test } from 'vitest'
import { fingerLesson } from '../../src/hand/finger-part.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** The fingers of each strike of the first part, highest string number first. */
function fingersOf(shapes: string, lines: string, attributes = 'grid=8 time=2/4'): readonly (readonly unknown[])[] {
  const text = `---\ntitle: T\n---\n\n:::shapes\n${shapes}\n:::\n\n:::part{#p ${attributes}}\n${lines}\n:::\n`
  const { lesson } = fingerLesson(readLesson({ path: 't.md', text }).lesson)
  return lesson.parts[0]!.bars.flatMap((bar) =>
    bar.events.flatMap((event) => (event.kind === 'strike' ? [event.notes.map((note) => note.finger)] : [])),
  )
}

test('single notes inside the chord in force take the fingers of its shape', () => {
  const shapes = 'C x 3 2 0 1 0 fingers x 3 2 0 1 0'
  expect(fingersOf(shapes, 'bar 1 chords C\n  1: 3@5 2@4\n  2: 0@3 1@2')).toEqual([[3], [2], [null], [1]])
})

test('a shape without fingers gets one fingering and keeps it', () => {
  const found = fingersOf('Am x 0 2 2 1 0', 'bar 1\n  1: Am Am\n  2: Am Am')
  expect(found[0]).toEqual([null, 2, 3, 1, null])
  expect(new Set(found.map(String)).size).toBe(1)
})

test('fingers the writer gave are kept where they break the usual order', () => {
  expect(fingersOf('A x 0 2 2 2 0 fingers x 0 2 1 3 0', 'bar 1\n  1: A -\n  2: - -')).toEqual([[null, 2, 1, 3, null]])
})

test('a hammered note takes a higher finger than the note it comes from', () => {
  const [from, to] = fingersOf('A x 0 2 2 2 0', 'bar 1 chords .\n  1: 5@3 h:7@3\n  2: - -')
  expect(Number(to![0])).toBeGreaterThan(Number(from![0]))
})

test('a slid note keeps its finger', () => {
  const [from, to] = fingersOf('A x 0 2 2 2 0', 'bar 1 chords .\n  1: 5@3 s:9@3\n  2: - -')
  expect(to).toEqual(from)
})

/** The fingers of the other ways to play in the first part. */
function asideFingers(shapes: string, lines: string): readonly (readonly unknown[])[] {
  const text = `---\ntitle: T\n---\n\n:::shapes\n${shapes}\n:::\n\n:::part{#p grid=8 time=2/4}\n${lines}\n:::\n`
  const { lesson } = fingerLesson(readLesson({ path: 't.md', text }).lesson)
  return lesson.parts[0]!.bars.flatMap(({ alternatives }) =>
    alternatives.flatMap(({ events }) =>
      events.flatMap((event) => (event.kind === 'strike' ? [event.notes.map((note) => note.finger)] : [])),
    ),
  )
}

test('another way to play is fingered from where the hand is before it', () => {
  const shapes = 'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1'
  // Finger 2 of the shape already stands on fret 8 of string 2, so it stays; the hammer takes the next free one.
  expect(asideFingers(shapes, 'bar 1 chords .\n  1: Em7 -\n  2: Em7 -\n  or 2: 8@2 h:10@2')).toEqual([[2], [4]])
  expect(asideFingers(shapes, 'bar 1 chords .\n  1: Em7 -\n  2: Em7 -\n  or 2: 12@3(1) 12@2(2)')).toEqual([[1], [2]])
})

test('another way to play leaves the main line as it was', () => {
  const shapes = 'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1'
  const lines = 'bar 1\n  1: Em7 -\n  2: 12@3 14@3'
  expect(fingersOf(shapes, `${lines}\n  or 2: 2@3 4@3`)).toEqual(fingersOf(shapes, lines))
})

test('a note added to a shape that needs all fingers sets them anew', () => {
  const [, added] = fingersOf('A 5 7 7 6 5 5 fingers 1 3 4 2 1 1', 'bar 1\n  1: A -\n  2: A+7@2 -')
  expect(added).toEqual([1, 3, 3, 2, 4, 1])
})

test('fingers the writer left open in a shape are filled in', () => {
  expect(fingersOf('C x 3 2 0 1 0 fingers x 3 0 0 1 0', 'bar 1\n  1: C -\n  2: - -')).toEqual([[3, 2, null, 1, null]])
})

test('two frets of a bass are played by the index and the little finger, of a ukulele by the next but one', () => {
  const high = (instrument: string): unknown => {
    const text = `---\ntitle: T\ninstrument: ${instrument}\n---\n\n:::part{#p grid=8 time=2/4 stroke=pluck}\nbar 1 chords .\n  1: 2@3(1) h:4@3\n  2: - -\n:::\n`
    const { lesson } = fingerLesson(readLesson({ path: 't.md', text }).lesson)
    const event = lesson.parts[0]!.bars[0]!.events[1]!
    return event.kind === 'strike' ? event.notes[0]!.finger : null
  }
  expect([high('bass'), high('ukulele')]).toEqual([4, 3])
})

test('single notes leave the fingers of the shape they lie in where a hammer-on needs them otherwise', () => {
  const shapes = 'D x 5 7 7 7 5 fingers x 1 2 3 4 1'
  const [plain] = fingersOf(shapes, 'bar 1 chords D\n  1: 7@3+7@2 -\n  2: - -')
  const [held, hammered] = fingersOf(shapes, 'bar 1 chords D\n  1: 7@3+7@2 h:9@3\n  2: - -')
  expect(plain).toEqual([3, 4])
  // The note that goes on keeps its finger, and the hammer has a higher one.
  expect(hammered![1]).toBe(held![1])
  expect(Number(hammered![0])).toBeGreaterThan(Number(hammered![1]))
})

test('a ringing note that a new shape let go is not held again', () => {
  const shapes = 'Em11 2 2 2 0 0 0 fingers 1 1 1 0 0 0\nG/D x x 0 0 2 0 fingers x x 0 0 1 0'
  const text = `---\ntitle: T\n---\n\n:::shapes\n${shapes}\n:::\n\n:::part{#p grid=4 time=3/4}\nbar 1 chords .\n  1: Em11_\n  2: G/D_\n  3: 2@3\n:::\n`
  const { hands } = fingerLesson(readLesson({ path: 't.md', text }).lesson)
  const last = hands.get('p')!.moments.at(-1)!
  expect(last.grip.presses.map(({ string, fret }) => `${fret}@${string}`)).toEqual(['2@3', '2@2'])
})

test('notes before a grip that nobody can form are fingered as if they ended there', () => {
  const shapes = 'Zig 1 3 5 7 9 11'
  const line = 'bar 1 chords .\n  1: 2@3 2@3\n  2: 3@3'
  expect(fingersOf(shapes, `${line} -`)).toEqual([[1], [1], [2]])
  expect(fingersOf(shapes, `${line} Zig`).slice(0, 3)).toEqual([[1], [1], [2]])
})

test('another way to play takes the finger that gets there in time from what is played before it', () => {
  const line = 'bar 1 chords .\n  1: 3@3(3) - - 2@2(2)\n  2: 3@3 - 3@4 -\n  or 2: 3@3 - 3@4 -'
  const text = `---\ntitle: T\ntempo: 84\ninstrument: bass\n---\n\n:::part{#p grid=16 time=2/4 stroke=pluck}\n${line}\n:::\n`
  const { lesson } = fingerLesson(readLesson({ path: 't.md', text }).lesson)
  const fingers = lesson.parts[0]!.bars.flatMap(({ events, alternatives }) =>
    [events.slice(-2), ...alternatives.map((one) => one.events)].map((line) =>
      line.flatMap((event) => (event.kind === 'strike' ? event.notes.map((note) => note.finger) : [])),
    ),
  )
  expect(fingers[1]).toEqual([3, 3])
})
