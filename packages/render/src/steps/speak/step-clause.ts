import type { Ticks } from '@barwise/parser'
import type { RichText } from './rich-text.ts'

/** A clause and the time it tells, so that it can be lit: ticks from the start of the bar. */
export interface StepClause {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  /** `shape` describes a grip finger by finger, which a page that shows its grid need not print. */
  readonly kind: 'step' | 'shape' | 'remark'
  /** Whole sentences, closed by their own marks. */
  readonly text: RichText
}
