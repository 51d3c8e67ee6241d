import { test } from 'vitest'
import { expectReadsBack } from '../../../../tests/steps/read-back.ts'
import { ferryQueue } from './ferry-queue.ts'
import { generatePlan } from './generate-plan.ts'
import { buildLesson } from './score-builder.ts'

test('the English steps of a part read back as its events', () => {
  const { lesson, part } = ferryQueue()
  expectReadsBack(lesson, part)
})

test('the English steps of 200 parts made by hand read back as their events', () => {
  for (let seed = 1; seed <= 200; seed++) {
    const { lesson, part } = buildLesson(generatePlan(seed))
    expectReadsBack(lesson, part)
  }
})
