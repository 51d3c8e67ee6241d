import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { type LoopReason, planPractice } from '../../src/hand/plan-practice.ts'
import { readLesson } from '../../src/read-lesson.ts'

const SHAPES = [
  'C x 3 2 0 1 0 fingers x 3 2 0 1 0',
  'G 3 2 0 0 0 3 fingers 2 1 0 0 0 3',
  'Gbm 2 4 4 2 2 2 fingers 1 3 4 1 1 1',
]

/** The plan of a part in eighths at 120. */
function plan(lines: string): ReturnType<typeof planPractice> {
  const text = `---\ntitle: Made\ntempo: 120\n---\n\n:::shapes\n${SHAPES.join('\n')}\n:::\n\n:::part{#made grid=8}\n${lines}\n:::\n`
  const file = { path: 'made.md', text }
  const { lesson } = checkLesson(readLesson(file).lesson, [file])
  return planPractice(lesson, lesson.parts[0]!)
}

/** The reasons that are changes. */
function changes(lines: string): readonly Extract<LoopReason, { kind: 'change' }>[] {
  return plan(lines).loops.flatMap(({ reason }) => (reason.kind === 'change' ? [reason] : []))
}

test('a change of fingers inside a shape names the fingers, not the shape twice', () => {
  const reason = changes('bar 1\n  1: C C+3@2\n  2: C C\n  3: C C\n  4: C C')[0]!
  expect([reason.from, reason.to, reason.within]).toEqual(['C', 'C', { kind: 'fingers', fingers: [4] }])
})

test('a shape moved along the neck says from where to where', () => {
  const reason = changes('bar 1\n  1: Gbm Gbm^+5\n  2: Gbm^+5 -\n  3: Gbm^+5 -\n  4: Gbm^+5 -')[0]!
  expect([reason.within, reason.fromFret, reason.toFret]).toEqual([{ kind: 'moved' }, 2, 7])
})

test('a change between two shapes is inside none', () => {
  const reason = changes('bar 1\n  1: C G\n  2: G G\n  3: G G\n  4: G G')[0]!
  expect([reason.from, reason.to, reason.within]).toEqual(['C', 'G', null])
})

test('strings of one shape struck by turns are no change of the hand', () => {
  expect(changes('bar 1\n  1: C@4-5 C@1-2\n  2: C@4-5 C@1-3\n  3: C@5 C@1-2\n  4: C@4-5 C')).toEqual([])
})

test('a change over the bar line leads into its bar, one inside the bar does not', () => {
  const over = plan('bar 1\n  1: C -\n  2: C -\n  3: C -\n  4: C C\nbar 2\n  1: G -\n  2: G -\n  3: G -\n  4: G -')
    .loops[0]!
  expect([over.bar, over.into]).toEqual([2, true])
  expect(plan('bar 1\n  1: C G\n  2: G G\n  3: G G\n  4: G G').loops[0]!.into).toBe(false)
})
