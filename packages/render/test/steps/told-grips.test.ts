import { expect, test } from 'vitest'
import { cardWritten, type Written } from './written-steps.ts'

/** What is told of one beat of sixteenths, the rest of the bar silent. */
function told(beat: string, written: Written = {}): string {
  return cardWritten(1, `bar 1\n  1: ${beat}\n  2: . . . .\n  3: . . . .\n  4: . . . .`, written)
}

test('a grip is told barre first, then the other fingers from the lowest string', () => {
  expect(told('Em7 - - -')).toContain(
    'Em7: finger 1 across fret 7 from string 5 to string 1 and finger 3 at fret 9 on string 4. Add finger 2 at fret 8 on string 2.',
  )
  expect(told('A9 - - -')).toContain(
    'A9: finger 3 across fret 12 from string 3 to string 1 and finger 2 at fret 12 on string 5. Add finger 1 at fret 11 on string 4.',
  )
})

test('open and silent strings follow the fingers', () => {
  expect(told('G - - -')).toContain('Add finger 3 at fret 3 on string 1. Strings 2–4 ring open. Strike G down')
  const shapes = 'A7 x 0 2 0 2 0 fingers x 0 1 0 2 0'
  expect(told('A7 - - -', { shapes })).toContain('Strings 5, 3 and 1 ring open. String 6 stays silent.')
  expect(told('D - - -', { shapes: 'D 0 0 0 0 0 0' })).toContain('D: all six strings ring open.')
})

test('each finger that damps is told with its strings, two of them in one sentence', () => {
  expect(told('Em7 - - -')).toContain('Let finger 1 touch string 6 to keep it quiet.')
  expect(told('Em7.open - - -')).toContain('Let finger 1 touch strings 6 and 1 to keep them quiet.')
  const shapes = 'C7 8 x 8 9 8 x fingers 2 x 3 4 1 x'
  expect(told('C7 - - -', { shapes })).toContain(
    'Let finger 3 touch string 5 and finger 1 string 1 to keep them quiet.',
  )
})

test('the chord that a grip only implies is told, and that a grip leaves out its root', () => {
  expect(told('Em7.open - - -')).toContain('Em7 open implies Em7.')
  const shapes = 'C7 x x 2 3 x 3 fingers x x 1 2 x 3'
  expect(told('C7 - - -', { shapes })).toContain('C7 leaves out its root.')
  expect(told('Em7 - - -')).not.toContain('root')
})

test('a grip that differs from a known one in a string or two is told by the difference', () => {
  const shapes =
    'E7 0 2 0 1 0 0 fingers 0 2 0 1 0 0\nE 0 2 2 1 0 0 fingers 0 2 3 1 0 0\nE7.top 0 2 0 1 3 x fingers 0 2 0 1 4 x'
  expect(told('E7 - E -', { shapes })).toContain('E is E7 with finger 3 at fret 2 on string 4. E down on ‘and’')
  expect(told('E7 - E7.top -', { shapes })).toContain(
    'E7 top is E7 with finger 4 at fret 3 on string 2 and string 1 silent.',
  )
})

test('a grip is told in full once in a part, then by its name, and by the way back to it', () => {
  const beat = told('Em7 A9 Em7 A9')
  expect(beat.match(/Em7: finger 1 across/g)).toHaveLength(1)
  expect(beat).toContain('Back to Em7: strike down on ‘and’. Back to A9: strike up on ‘a’.')
  const second = cardWritten(2, 'bar 1\n  1-4 in 1: Em7\nbar 2\n  1: x x x Em7\n  2-4 in 1: -')
  expect(second).toContain('Strike Em7 up on the ‘a’ of 1')
  expect(second).not.toContain('across')
})

test('a grip is described before what is silent or scratched in its beat', () => {
  expect(told('x x Em7 -')).toMatch(/^1: Em7: finger 1 .* quiet\. Scratch down and up\. Strike Em7 down on ‘and’/m)
})

test('strings are told by name or by number', () => {
  expect(told('Em7 - - -', { strings: 'names' })).toContain('from the A string to the high E string')
  expect(told('Em7 - - -', { strings: 'numbers' })).toContain('from string 5 to string 1')
})

test('of sentences that two shapes share only those are said with the shape’s name', () => {
  const shapes = 'G5 3 5 5 x x x fingers 1 3 4 x x x\nA5 5 7 7 x x x fingers 1 3 4 x x x'
  expect(told('G5 - A5 -', { shapes })).toContain(
    'A5: finger 1 at fret 5 on string 6 and finger 3 at fret 7 on string 5. Add finger 4 at fret 7 on string 4. ' +
      'For A5, let finger 4 touch string 3 to keep it quiet. A5 keeps strings 2 and 1 silent.',
  )
  const mixed = 'G5 3 5 5 x x x fingers 1 3 4 x x x\nE5 0 2 2 x x x fingers 0 1 1 x x x'
  expect(told('E5 - G5 -', { shapes: mixed })).toContain(
    'Let finger 4 touch string 3 to keep it quiet. G5 keeps strings 2 and 1 silent.',
  )
})
