import { gripsOf } from './checks/grips-of.ts'
import { HAND_RULES } from './checks/hand-rules.ts'
import { HARMONY_RULES } from './checks/harmony-rules.ts'
import type { Rule } from './checks/rule.ts'
import { silencer } from './checks/silenced.ts'
import type { Finding } from './finding/finding.ts'
import { inSourceOrder, placeFinding } from './finding/reporter.ts'
import { fingerLesson, handOnNeck } from './hand/finger-part.ts'
import type { HandPace } from './hand/hand-pace.ts'
import type { Lesson } from './score/lesson.ts'
import { createLineIndex } from './source/line-index.ts'
import type { SourceFile } from './source/span.ts'
import { harmonyOf } from './theory/judge-harmony.ts'

const RULES: readonly Rule[] = [...HAND_RULES, ...HARMONY_RULES]

export interface CheckedLesson {
  /** The lesson with every finger worked out and every shape judged against its label. */
  readonly lesson: Lesson
  /** What an experienced colleague would say, in the order of the source; what the writer has silenced is left out. */
  readonly findings: readonly Finding[]
}

/** What a caller may set. */
export interface CheckOptions {
  /** How fast the fretting hand is when changes are judged: common judgement unless given. */
  readonly pace?: HandPace
}

/**
 * Checks a lesson that was read: works out fingers and harmony and runs every rule. `sources` are the files its spans
 * count in: the lesson's own, and the shared shape file when its shapes come from one. Findings in a shape file that only
 * repeats for each lesson are given for each; the caller may show them once. Never throws on what a writer wrote.
 */
export function checkLesson(lesson: Lesson, sources: readonly SourceFile[], options: CheckOptions = {}): CheckedLesson {
  const judged = {
    ...lesson,
    shapes: lesson.shapes.map((shape) => ({ ...shape, harmony: harmonyOf(shape, lesson.instrument) })),
  }
  const on = handOnNeck(lesson, options.pace)
  const fingered = fingerLesson(judged, on)
  const context = {
    lesson: fingered.lesson,
    on,
    hands: fingered.hands,
    grips: gripsOf(fingered.lesson, fingered.hands),
  }
  const files = new Map(
    sources.map((source) => {
      const index = createLineIndex(source.text)
      return [source.path, { index, silenced: silencer(source, { index, accept: lesson.settings.accept }) }]
    }),
  )
  const findings = RULES.flatMap((rule) => rule.check(context)).flatMap((draft) => {
    const path = draft.file ?? lesson.file
    const file = files.get(path)
    if (file === undefined) return []
    const finding = placeFinding(draft, path, file.index)
    return file.silenced(finding) ? [] : [finding]
  })
  return { lesson: fingered.lesson, findings: findings.sort(inSourceOrder) }
}
