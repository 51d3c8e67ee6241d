import type { Bar } from '../score/part.ts'
import { TICKS_PER_QUARTER, type Ticks } from '../score/time.ts'
import type { HandMoment } from './hand-moments.ts'

/**
 * Where a place in a bar falls when the bar is swung: the first of two eighths (`swing 8`) or sixteenths (`swing 16`) takes two
 * thirds of their time, as the sign at the tempo shows it. Tuplets stay even. Ticks from the start of the bar.
 *
 * @example the second eighth of a beat, 1680, falls at 2240 with `swing 8`
 */
export function swungTicks(at: Ticks, { feel, groups }: Pick<Bar, 'feel' | 'groups'>): number {
  if (feel === 'straight' || groups.some((group) => at > group.at && at < group.at + group.length)) return at
  const pair = feel === 'swing 8' ? TICKS_PER_QUARTER : TICKS_PER_QUARTER / 2
  const inside = at % pair
  const half = pair / 2
  const swung = inside <= half ? (inside * 4) / 3 : (4 * half) / 3 + ((inside - half) * 2) / 3
  return at - inside + swung
}

/** Where a moment falls in the feel of its bar, from its `start` on the straight grid; both in ticks from the start of the part. */
export function swungStart({ start, event, bar }: HandMoment): number {
  return start - event.at + swungTicks(event.at, bar)
}

/** Seconds of a stretch of ticks at the tempo of a bar. */
export function seconds(ticks: number, { beatTicks, tempoBpm }: Bar): number {
  return (ticks / beatTicks) * (60 / tempoBpm)
}
