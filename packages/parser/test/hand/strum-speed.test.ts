import { expect, test } from 'vitest'
import { coarsestGrid, handCyclesHz } from '../../src/hand/strum-speed.ts'
import { readLesson } from '../../src/read-lesson.ts'
import type { Bar } from '../../src/score/part.ts'

function barOf(lines: string, attributes: string): Bar {
  const text = `---\ntitle: T\ntempo: 120\n---\n\n:::part{#p ${attributes}}\nbar 1\n${lines}\n:::\n`
  const { lesson, findings } = readLesson({ path: 't.md', text })
  expect(findings.map(({ message }) => message)).toEqual([])
  return lesson.parts[0]!.bars[0]!
}

test('two slots of the grid are one swing of the hand', () => {
  // Sixteenths in quarter beats swing at a thirtieth of the tempo.
  expect(handCyclesHz(barOf('  1: x x x x\n  2: x x x x', 'grid=16 time=2/4'))).toBe(4)
  expect(handCyclesHz(barOf('  1: x x\n  2: x x', 'grid=8 time=2/4'))).toBe(2)
})

test('the coarsest grid that carries the strokes counts, and rests do not stop the hand', () => {
  const bar = barOf('  1: x - x -\n  2: . . x -', 'grid=16 time=2/4')
  expect(coarsestGrid(bar)).toBe(8)
  expect(handCyclesHz(bar)).toBe(2)
})

test('a hand that only strikes down swings once for each stroke, where they are nearest', () => {
  expect(handCyclesHz(barOf('  1: x x\n  2: x x', 'grid=8 time=2/4 stroke=down'))).toBe(4)
  expect(handCyclesHz(barOf('  1: . x\n  2: . x', 'grid=8 time=2/4 stroke=down'))).toBe(2)
  expect(handCyclesHz(barOf('  1: . x\n  2: . .', 'grid=8 time=2/4 stroke=down'))).toBe(1)
})

test('a tuplet counts the strokes it has', () => {
  expect(handCyclesHz(barOf('  1 in 3: x x x\n  2 in 3: x x x', 'grid=8 time=2/4'))).toBe(3)
  expect(handCyclesHz(barOf('  1 in 3: x - x\n  2 in 3: x - x', 'grid=4 time=2/4'))).toBe(2)
})

test('two strokes in the time of one slot are no speed to keep up', () => {
  expect(handCyclesHz(barOf('  1: x (x x) x x\n  2: x x x x', 'grid=16 time=2/4'))).toBe(4)
})

test('a plucking hand does not swing', () => {
  expect(handCyclesHz(barOf('  1: 0@5 0@4\n  2: 0@3 0@2', 'grid=8 time=2/4 stroke=pluck'))).toBeNull()
})
