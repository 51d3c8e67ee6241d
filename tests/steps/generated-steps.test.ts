import { checkLesson, type Lesson, type Part, readLesson } from '@barwise/parser'
import { stepsOfPart, tellPart } from '@barwise/render'
import { expect, test } from 'vitest'
import { generatePart, lessonAround } from '../model/generate-part.ts'
import { patternLesson } from './generate-pattern.ts'
import { expectReadsBack } from './read-back.ts'
import { faultsOf } from './sentences.ts'

/** Holds a part to all that is asked of steps, naming the seed where it fails. */
function expectGoodSteps(lesson: Lesson, part: Part, seed: number): void {
  try {
    expectReadsBack(lesson, part)
    expect(faultsOf(stepsOfPart(lesson, part, { language: 'en' }), 25)).toEqual([])
  } catch (error) {
    if (error instanceof Error) error.message = `seed ${seed}: ${error.message}`
    throw error
  }
}

test('the English steps of 1,000 generated parts read back as their events, in sentences of 25 words at most, none twice in a card', () => {
  for (let seed = 1; seed <= 1000; seed++) {
    const { lesson } = readLesson({ path: 'generated.md', text: lessonAround(generatePart(seed, 4)) })
    expect(lesson.parts.length).toBe(1)
    for (const part of lesson.parts) expectGoodSteps(lesson, part, seed)
  }
}, 240_000)

test('so do those of 150 parts made of patterns, most of them told by other bars', () => {
  const told = { whole: 0, asItIs: 0, exchanged: 0, chords: 0, cut: 0, ringing: 0, remarks: 0, alternatives: 0 }
  for (let seed = 1; seed <= 150; seed++) {
    const file = { path: 'made.md', text: patternLesson(seed) }
    const read = readLesson(file)
    expect(
      read.findings.filter(({ severity }) => severity === 'error'),
      file.text,
    ).toEqual([])
    const { lesson } = checkLesson(read.lesson, [file])
    for (const part of lesson.parts) {
      expectGoodSteps(lesson, part, seed)
      for (const card of tellPart(lesson, part).cards) {
        if (card.as === null) told.whole++
        else if (card.as.exchanges.length > 0) told.exchanged++
        else told.asItIs++
        if (card.chords.length > 0) told.chords++
        if (card.everyBeatIn !== null) told.cut++
        if (card.everyRing) told.ringing++
        const kinds = card.items.flatMap((item) => [item.kind, ...item.instructions.map(({ kind }) => kind)])
        if (kinds.includes('remark')) told.remarks++
        if (kinds.includes('or')) told.alternatives++
      }
    }
  }
  for (const count of Object.values(told)) expect(count).toBeGreaterThan(25)
}, 120_000)
