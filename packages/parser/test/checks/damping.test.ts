import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** The damping findings of a bar of one stroke. */
function loose(sign: string, stroke = 'alternate', shapes = ''): readonly string[] {
  const text = `---\ntitle: T\n---\n\n${shapes}:::part{#p grid=4 time=2/4 stroke=${stroke}}\nbar 1 chords .\n  1: ${sign}\n  2: -\n:::\n`
  const source = { path: 't.md', text }
  return checkLesson(readLesson(source).lesson, [source])
    .findings.filter(({ code }) => code === 'cannot-damp')
    .map(({ message }) => message)
}

test('open strings struck across a silent one cannot be damped', () => {
  expect(loose('0@5+0@3')).toHaveLength(1)
})

test('a string struck dead, or plucked around, needs no damping', () => {
  expect(loose('0@5+x@4+0@3')).toEqual([])
  expect(loose('0@5+0@3', 'pluck')).toEqual([])
})

test('a finger on a neighbouring string damps the one between', () => {
  expect(loose('0@5+2@3')).toEqual([])
  expect(loose('3@5+0@3')).toEqual([])
})

test('strings left out of a shape are damped by its fingers that are not needed, or not at all', () => {
  const shapes = ':::shapes\nEm 0 2 2 0 0 0 fingers 0 2 3 0 0 0\n:::\n\n'
  expect(loose('Em@6,3', 'alternate', shapes)).toEqual([])
  expect(loose('Em@3,1', 'alternate', shapes)).toEqual([
    'no finger of Em as played in bar 1 can keep string 2 quiet when the hand sweeps across',
  ])
  expect(loose('Em@3,1', 'pluck', shapes)).toEqual([])
})
