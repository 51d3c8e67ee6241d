import type { FindingCode } from '../finding/codes.ts'
import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredPart } from '../hand/finger-part.ts'
import type { HandOnNeck } from '../hand/rank-for-hand.ts'
import type { Lesson } from '../score/lesson.ts'
import type { JudgedGrip } from './grips-of.ts'

/** What a rule may look at: the lesson with its fingers and harmony worked out, and what was worked out on the way. */
export interface RuleContext {
  readonly lesson: Lesson
  readonly on: HandOnNeck
  /** What the fretting hand does, by part id. */
  readonly hands: ReadonlyMap<string, FingeredPart>
  /** Every different grip of the lesson once. */
  readonly grips: readonly JudgedGrip[]
}

/** One thing an experienced colleague looks for. Pure: the same lesson gives the same findings, in any order. */
export interface Rule {
  /** The codes it can give; each is documented with a bad and a good lesson that run as tests. */
  readonly codes: readonly FindingCode[]
  readonly check: (context: RuleContext) => readonly FindingDraft[]
}
