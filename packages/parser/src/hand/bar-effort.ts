import type { Lesson } from '../score/lesson.ts'
import type { Part } from '../score/part.ts'
import { weighPart } from './bar-load.ts'

/** How much a bar asks of both hands, from 1 (easy) to 4 (hard). */
export type Effort = 1 | 2 | 3 | 4

/** Loads up to which a bar is of effort 1, 2 and 3; judgement. */
const STEPS = [0.2, 0.33, 0.46]

/** The effort of each bar of a part by its number. */
export function effortOfBars(lesson: Lesson, part: Part): ReadonlyMap<number, Effort> {
  const { loads } = weighPart(lesson, part)
  return new Map(loads.map(({ bar, load }) => [bar.number, (STEPS.filter((step) => load > step).length + 1) as Effort]))
}
