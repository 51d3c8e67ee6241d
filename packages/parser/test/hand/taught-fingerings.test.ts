import { expect, test } from 'vitest'
import { fingerLesson } from '../../src/hand/finger-part.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** The fingers a shape gets that is played by itself, as its line would list them. */
function fingersOf(frets: string, settings = ''): string {
  const lines = 'bar 1 chords .\n  1: Shape\n  2: Shape'
  const text = `---\ntitle: T\n${settings}---\n\n:::shapes\nShape ${frets}\n:::\n\n:::part{#p grid=4 time=2/4}\n${lines}\n:::\n`
  const [shape] = fingerLesson(readLesson({ path: 't.md', text }).lesson).lesson.shapes
  return shape!.fingers
    .toReversed()
    .map((finger, at) => finger ?? frets.split(' ')[at])
    .join(' ')
}

// Common practice of guitar methods.
test.each([
  ['C', 'x 3 2 0 1 0', 'x 3 2 0 1 0'],
  ['G', '3 2 0 0 0 3', '2 1 0 0 0 3'],
  ['G with four fingers', '3 2 0 0 3 3', '2 1 0 0 3 4'],
  ['D', 'x x 0 2 3 2', 'x x 0 1 3 2'],
  ['D7', 'x x 0 2 1 2', 'x x 0 2 1 3'],
  ['Am', 'x 0 2 2 1 0', 'x 0 2 3 1 0'],
  ['A', 'x 0 2 2 2 0', 'x 0 1 2 3 0'],
  ['E', '0 2 2 1 0 0', '0 2 3 1 0 0'],
  ['E7', '0 2 0 1 0 0', '0 2 0 1 0 0'],
  ['B7', 'x 2 1 2 0 2', 'x 2 1 3 0 4'],
  ['Cadd9', 'x 3 2 0 3 3', 'x 2 1 0 3 4'],
  ['F with a barre', '1 3 3 2 1 1', '1 3 4 2 1 1'],
  ['F on four strings', 'x x 3 2 1 1', 'x x 3 2 1 1'],
  ['Bm', 'x 2 4 4 3 2', 'x 1 3 4 2 1'],
  ['F#m', '2 4 4 2 2 2', '1 3 4 1 1 1'],
  ['C9', 'x 3 2 3 3 3', 'x 2 1 3 3 3'],
  ['E7#9', 'x 7 6 7 8 x', 'x 2 1 3 4 x'],
  ['G13', '3 x 3 4 5 x', '1 x 2 3 4 x'],
  ['a power chord', '3 5 5 x x x', '1 3 4 x x x'],
])('%s is fingered as it is taught', (_, frets, fingers) => {
  expect(fingersOf(frets)).toBe(fingers)
})

test('a power chord of a lowered sixth string lies under one finger', () => {
  expect(fingersOf('5 5 5 x x x', 'tuning: D2 A2 D3 G3 B3 E4\n')).toBe('1 1 1 x x x')
})

test('a ukulele chord with one fret takes the finger of that fret', () => {
  expect(fingersOf('0 0 0 3', 'instrument: ukulele\n')).toBe('0 0 0 3')
})

test('no finger lies flat over a string that must be silent', () => {
  expect(fingersOf('3 x 3 3 x x')).toBe('1 x 2 3 x x')
})
