import type { Group, Ticks } from '@barwise/parser'
import { nominalTicks, type TupletRatio, tupletRatio } from './tuplet-ratio.ts'

/** A tuplet as it is written. Ticks from the start of the bar. */
export interface WrittenTuplet extends TupletRatio {
  readonly at: Ticks
  readonly length: Ticks
  /** The tuplet it is a part of, null when it stands alone. */
  readonly inside: WrittenTuplet | null
}

/** A stretch of one bar, in the innermost tuplet it belongs to. */
export interface TupletStretch {
  readonly from: Ticks
  readonly to: Ticks
  readonly tuplet: WrittenTuplet | null
}

/** Cuts a stretch where tuplets begin and end, tuplets inside tuplets too; groups whose parts are plain values need no cut. */
export function cutAtTuplets(from: Ticks, to: Ticks, groups: readonly Group[]): readonly TupletStretch[] {
  const sorted = [...groups].sort((a, b) => a.at - b.at || b.length - a.length)
  return cutInside({ from, to, tuplet: null }, sorted)
}

function cutInside({ from, to, tuplet }: TupletStretch, groups: readonly Group[]): readonly TupletStretch[] {
  const stretches: TupletStretch[] = []
  let [at, covered] = [from, 0]
  groups.forEach((group, i) => {
    const ratio = group.at < covered ? null : tupletRatio({ ...group, length: nominalIn(tuplet, group.length) })
    if (ratio === null) return
    const end = group.at + group.length
    covered = end
    if (end <= at || group.at >= to) return
    if (group.at > at) stretches.push({ from: at, to: group.at, tuplet })
    const inner = groups.slice(i + 1).filter((other) => other.at >= group.at && other.at + other.length <= end)
    const own: WrittenTuplet = { ...ratio, at: group.at, length: group.length, inside: tuplet }
    const start = Math.max(at, group.at)
    at = Math.min(end, to)
    stretches.push(...cutInside({ from: start, to: at, tuplet: own }, inner))
  })
  if (at < to) stretches.push({ from: at, to, tuplet })
  return stretches
}

/** The time a stretch inside a tuplet seems to last by its written values; outside of one it is what it lasts. */
export function nominalIn(tuplet: WrittenTuplet | null, ticks: Ticks): Ticks {
  return tuplet === null ? ticks : nominalTicks(nominalIn(tuplet.inside, ticks), tuplet)
}

/** How long a written value lasts inside a tuplet. */
export function lastingIn(tuplet: WrittenTuplet | null, nominal: Ticks): Ticks {
  return tuplet === null ? nominal : lastingIn(tuplet.inside, (nominal * tuplet.normal) / tuplet.parts)
}

/** A tuplet and those it stands in, outermost first. */
export function tupletChain(tuplet: WrittenTuplet | null): readonly WrittenTuplet[] {
  return tuplet === null ? [] : [...tupletChain(tuplet.inside), tuplet]
}
