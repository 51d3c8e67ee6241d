import type { Bar, Ticks } from '@barwise/parser'

/** A stretch of a bar in ticks from its start. */
export interface BarStretch {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
}

/** The beat nearest to the middle of a stretch at which nothing cut into equal parts is torn; null when there is none. */
export function middleBeat(bar: Bar, stretch: BarStretch): Ticks | null {
  const middle = (stretch.fromTicks + stretch.toTicks) / 2
  const beats: Ticks[] = []
  for (let at = 0; at < stretch.toTicks; at += bar.beatTicks) if (at > stretch.fromTicks) beats.push(at)
  const whole = beats.filter((at) => bar.groups.every((group) => at <= group.at || at >= group.at + group.length))
  return whole.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle))[0] ?? null
}

/** A stretch cut at its middle beats into as few pieces as `fits` takes; what has no beat inside stays whole. */
export function cutToFit(bar: Bar, stretch: BarStretch, fits: (piece: BarStretch) => boolean): readonly BarStretch[] {
  const cut = fits(stretch) ? null : middleBeat(bar, stretch)
  if (cut === null) return [stretch]
  return [
    ...cutToFit(bar, { fromTicks: stretch.fromTicks, toTicks: cut }, fits),
    ...cutToFit(bar, { fromTicks: cut, toTicks: stretch.toTicks }, fits),
  ]
}
