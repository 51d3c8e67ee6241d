import { metreShape } from './metre-shape.ts'
import type { Bar, Group } from './part.ts'
import { TICKS_PER_QUARTER, type Ticks } from './time.ts'

/** What of a bar says how it is felt. */
type FeltBar = Pick<Bar, 'number' | 'length' | 'metre' | 'feel' | 'groups'>

/** A moment as written and as played, ticks from the start of the full bar. */
interface Bend {
  readonly at: Ticks
  readonly played: Ticks
}

/**
 * When a moment of a bar is played under its feel: of each pair of eighths (or sixteenths) the first takes two thirds, as in a triplet, and
 * what is shorter bends with them. A cut that leaves the grid is played as evenly as it is written, and so is a beat that does not fall into
 * pairs. Common practice. Whole ticks, both ends of the bar where they are.
 *
 * @example swing 8: 1680 -> 2240, 840 -> 1120, 2520 -> 2800
 */
export function swungAt(bar: FeltBar): (at: Ticks) => Ticks {
  if (bar.feel === 'straight') return (at) => at
  const { length } = metreShape(bar.metre)
  const missing = bar.number === 0 ? Math.max(0, length - bar.length) : 0
  const bends = evenGroups(bar, missing, pairBends(bar))
  return (at) => bent(at + missing, bends) - missing
}

function pairBends({ metre, feel }: FeltBar): readonly Bend[] {
  const pair = feel === 'swing 8' ? TICKS_PER_QUARTER : TICKS_PER_QUARTER / 2
  const { beats, length } = metreShape(metre)
  const bends: Bend[] = []
  for (const [i, from] of beats.slice(0, -1).entries()) {
    const to = beats[i + 1] ?? length
    bends.push({ at: from, played: from })
    if ((to - from) % pair !== 0) continue
    for (let at = from; at < to; at += pair)
      bends.push({ at: at + pair / 2, played: at + (pair * 2) / 3 }, { at: at + pair, played: at + pair })
  }
  return [...bends, { at: length, played: length }]
}

/** Nothing bends inside a cut that leaves the grid; it lies between where its ends are played. */
function evenGroups(bar: FeltBar, missing: Ticks, bends: readonly Bend[]): readonly Bend[] {
  const tuplets = bar.groups.filter(isTuplet)
  const groups = tuplets
    .filter((group) => !tuplets.some((other) => other !== group && holds(other, group)))
    .map(({ at, length }) => ({ from: at + missing, to: at + missing + length }))
  const ends = groups.flatMap(({ from, to }) => [from, to]).map((at) => ({ at, played: bent(at, bends) }))
  const outside = bends.filter(({ at }) => !groups.some(({ from, to }) => from <= at && at <= to))
  return [...outside, ...ends].sort((a, b) => a.at - b.at)
}

/** Whether the parts of a cut are no plain or dotted value, so that a figure stands over them. */
function isTuplet({ length, parts }: Group): boolean {
  const part = length / parts
  const isPlain = (ticks: number): boolean => Number.isInteger(Math.log2((4 * TICKS_PER_QUARTER) / ticks))
  return !isPlain(part) && !isPlain((part * 2) / 3)
}

function holds(outer: Group, { at, length }: Group): boolean {
  return outer.at <= at && at + length <= outer.at + outer.length
}

function bent(at: Ticks, bends: readonly Bend[]): Ticks {
  const next = bends.findIndex((bend) => bend.at >= at)
  const [before, after] = [bends[Math.max(0, next - 1)], bends[next]]
  if (after === undefined || before === undefined || after.at === before.at) return after?.played ?? at
  const share = (at - before.at) / (after.at - before.at)
  return Math.round(before.played + share * (after.played - before.played))
}
