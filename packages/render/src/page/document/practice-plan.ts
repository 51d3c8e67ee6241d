import { type Lesson, type Part, planPractice } from '@barwise/parser'
import type { PageWords } from './page-words.ts'
import { holdNumbers } from './typography.ts'

/** A stretch worth looping, and why: "Bar 2, beats 3–4" and a sentence. */
export interface LoopAdvice {
  readonly bar: number
  readonly where: string
  readonly why: string
}

/** What a practice plan prints besides the care note. Tempi in counts of the part, climbing to the goal. */
export interface PracticePlan {
  readonly ladderBpm: readonly number[]
  readonly loops: readonly LoopAdvice[]
  /** Minutes a sitting. */
  readonly minutes: number
}

/** The plan of a part in the words of the page. */
export function practicePlan(lesson: Lesson, part: Part, words: PageWords): PracticePlan {
  const { ladderBpm, loops, minutes } = planPractice(lesson, part)
  return {
    ladderBpm,
    loops: loops.map((loop) => ({
      bar: loop.bar,
      where: holdNumbers(words.loopPlace(loop), words),
      why: holdNumbers(words.loopReason(loop.reason), words),
    })),
    minutes,
  }
}
