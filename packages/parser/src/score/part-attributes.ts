import type { PartView, StrokeStyle, Touch } from './part.ts'
import type { Key } from './pitch.ts'
import type { Feel, Grid, Metre } from './time.ts'

/** The attributes of a `part` block, checked, with everything left out taken from the lesson's settings. */
export interface PartAttributes {
  readonly title: string
  readonly grid: Grid
  readonly metre: Metre
  /** Beats counted in a compound bar (2 on 6/8), null when the unit of the metre is counted. */
  readonly count: number | null
  readonly key: Key
  readonly tempoBpm: number
  readonly feel: Feel
  readonly stroke: StrokeStyle
  readonly touch: Touch
  readonly show: readonly PartView[]
}
