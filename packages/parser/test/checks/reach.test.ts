import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** What is said of reach over these shapes and bars. */
function said(shapes: string, lines: string, settings = ''): readonly string[] {
  const text = `---\ntitle: T\ntempo: 60\n${settings}---\n\n:::shapes\n${shapes}\n:::\n\n:::part{#p grid=4 time=2/4}\n${lines}\n:::\n`
  const source = { path: 't.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  return checkLesson(read.lesson, [source])
    .findings.filter(({ code }) => code.startsWith('stretch'))
    .map(({ severity, message }) => `${severity}: ${message}`)
}

const NONE = 'bar 1 chords .\n  1: .\n  2: .'
const FIVE = 'Five 1 5 x x x x fingers 1 4 x x x x'

// Span from fret 1 to fret 5 at 648 mm, tips at 0.75 of the fret space: 128 mm, the verdict of the table of limits.
test('the same frets ask less of a hand above a capo, on a shorter neck, and of a larger hand', () => {
  expect(said(FIVE, NONE)).toEqual([
    'warning: Five is a very hard stretch for an adult hand: fingers 1 and 4 are 128 mm apart on frets 1 and 5',
  ])
  expect(said(FIVE, NONE, 'capo: 5\n')).toEqual([
    'note: Five is a stretch for an adult hand: fingers 1 and 4 are 96 mm apart on frets 1 and 5',
  ])
  expect(said(FIVE, NONE, 'scale: 380\n')).toEqual([])
  expect(said(FIVE, NONE, 'hand: small\n')).toEqual([
    'error: Five is out of reach for a small hand: fingers 1 and 4 are 128 mm apart on frets 1 and 5',
  ])
})

test('a shape moved or added to is only reported where it asks for more than on its own line', () => {
  const wide = 'Wide x 8 9 10 12 x fingers x 1 2 3 4 x'
  const home = 'note: Wide is a stretch for an adult hand: fingers 2 and 4 are 62 mm apart on frets 9 and 12'
  expect(said(wide, 'bar 1 chords .\n  1: Wide\n  2: Wide^-1')).toEqual([home])
  expect(said(wide, 'bar 1 chords .\n  1: Wide\n  2: Wide^-6')).toEqual([
    home,
    'warning: Wide as played in bar 1 is a very hard stretch for an adult hand: fingers 1 and 4 are 121 mm apart on frets 2 and 6',
  ])
})

test('other ways to play are held to the same limits', () => {
  expect(said(FIVE, 'bar 1 chords .\n  1: 1@5(1)\n  2: 1@5(1)\n  or 2: 1@5(1)+6@4(4)', 'accept: [stretch]\n')).toEqual([
    'error: the grip in bar 1 is out of reach for an adult hand: fingers 1 and 4 are 156 mm apart on frets 1 and 6',
  ])
})

test('other fingers are proposed where they reach with less', () => {
  const text = `---\ntitle: T\n---\n\n:::shapes\nBb x 1 3 3 3 1 fingers x 1 2 3 4 1\n:::\n`
  const source = { path: 't.md', text }
  const [finding] = checkLesson(readLesson(source).lesson, [source]).findings
  expect(finding!.help).toMatch(/^try `fingers x 1 3 3 3 1`, or practise it higher up the neck first/)
})
