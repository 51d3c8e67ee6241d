import { readLesson } from '@barwise/parser'
import { expect, test } from 'vitest'
import { generatePart, lessonAround } from '../model/generate-part.ts'
import { expectReadsBack } from './read-back.ts'

test('the English steps of 1,000 generated parts read back as their events', () => {
  for (let seed = 1; seed <= 1000; seed++) {
    const { lesson } = readLesson({ path: 'generated.md', text: lessonAround(generatePart(seed, 4)) })
    expect(lesson.parts.length).toBe(1)
    for (const part of lesson.parts) {
      try {
        expectReadsBack(lesson, part)
      } catch (error) {
        if (error instanceof Error) error.message = `seed ${seed}: ${error.message}`
        throw error
      }
    }
  }
}, 240_000)
