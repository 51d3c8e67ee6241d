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
