import type { Lesson, Part } from '@barwise/parser'

/** A stretch worth looping, and why: "Bar 2, beats 3–4" and a sentence. */
export interface LoopAdvice {
  readonly where: string
  readonly why: string
}

/** What a practice plan prints besides the care note. Tempi in counts of the part, climbing to the goal. */
export interface PracticePlan {
  readonly ladderBpm: readonly number[]
  readonly loops: readonly LoopAdvice[]
}

const RUNGS = 6
/** Where practice starts when nothing harder is known: two thirds of the goal. Common practice. */
const START = 0.65

/** The ladder from two thirds of the goal up to it, in even steps of whole numbers; no loops, because nothing was judged. */
export function plainPlan(lesson: Lesson, part: Part): PracticePlan {
  const first = part.bars.find((bar) => bar.number > 0) ?? part.bars[0]
  const goal = lesson.settings.goalBpm ?? first?.tempoBpm ?? lesson.settings.tempoBpm
  const start = Math.min(goal, Math.round((goal * START) / 2) * 2)
  const ladder = Array.from({ length: RUNGS }, (_, rung) => Math.round(start + ((goal - start) * rung) / (RUNGS - 1)))
  return { ladderBpm: [...new Set(ladder)], loops: [] }
}
