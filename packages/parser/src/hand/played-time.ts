import type { Bar } from '../score/part.ts'
import type { Ticks } from '../score/time.ts'
import type { HandMoment } from './hand-moments.ts'

/** Where a moment falls in the feel of its bar, in ticks from the start of bar 1. */
export function playedStart({ start, event, playedAt }: HandMoment): Ticks {
  return start - event.at + playedAt
}

/** Seconds of a stretch of ticks at the tempo of a bar. */
export function seconds(ticks: Ticks, { beatTicks, tempoBpm }: Bar): number {
  return (ticks / beatTicks) * (60 / tempoBpm)
}
