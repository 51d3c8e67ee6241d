import type { Part } from '@barwise/parser'
import type { PartSteps, StepCard } from '../../steps/part-steps.ts'
import type { RichText } from '../../steps/speak/rich-text.ts'
import type { BarNote } from '../document/margin-note.ts'

/** The cards of a part that one section prints, in order. */
export interface CardSection {
  readonly title: string
  readonly part: Part
  readonly steps: PartSteps
  readonly cards: readonly StepCard[]
  /** What is said before the first card, of the part's form and its count; may be empty. */
  readonly opening: RichText
  /** What the check found in them: the teacher's edition only. */
  readonly notes: readonly BarNote[]
}
