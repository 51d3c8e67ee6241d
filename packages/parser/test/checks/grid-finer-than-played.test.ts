import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** What is said of the grid of a part of sixteenths in 2/4. */
function said(lines: string): readonly string[] {
  const shapes = 'Em 0 2 2 0 0 0 fingers 0 2 3 0 0 0'
  const text = `---\ntitle: T\ntempo: 60\n---\n\n:::shapes\n${shapes}\n:::\n\n:::part{#p title=P grid=16 time=2/4}\n${lines}\n:::\n`
  const source = { path: 't.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  return checkLesson(read.lesson, [source])
    .findings.filter(({ code }) => code === 'grid-finer-than-played')
    .map(({ message, help }) => `${message} (${help})`)
}

test('a grid finer than everything in it is worth a note, with the coarsest that carries it all', () => {
  expect(said('bar 1\n  1: Em - - -\n  2: Em - - -')).toEqual([
    'P has a grid of 16 but every stroke falls on quarters (write `grid=4` if your hand swings in quarters)',
  ])
  expect(said('bar 1\n  1: Em - Em -\n  2: Em - - -')[0]).toContain('write `grid=8`')
})

test('what stands between the strokes needs its slots too: hammered notes, rests, tuplets, other ways to play', () => {
  expect(said('bar 1\n  1: Em - h:2@3 -\n  2: Em - - -')[0]).toContain('write `grid=8`')
  expect(said('bar 1\n  1: Em - - .\n  2: Em - - -')).toEqual([])
  expect(said('bar 1\n  1 in 3: Em Em Em\n  2: Em - - -')).toEqual([])
  expect(said('bar 1\n  1: Em - - -\n  2: Em - - -\n  or 2: Em Em - -')).toEqual([])
  expect(said('bar 1\n  1: Em - - -\n  2: Em - - -\n  or 2: Em - Em -')[0]).toContain('write `grid=8`')
})
