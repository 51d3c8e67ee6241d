import type { Bar, Part, Ticks } from '@barwise/parser'
import { beatCount, differingBeats } from './bar-compare.ts'

/** How a bar is told by an earlier one: all of `bar` but the stretch from `fromTicks` to `toTicks`. */
export interface AsBar {
  readonly bar: number
  /** Ticks up to which it is as the other bar, and from which it is told. */
  readonly untilTicks: Ticks
  /** Ticks from which it is as the other bar again; the bar's length when it is not. */
  readonly fromTicks: Ticks
}

/** A bar that gets a card: the bar itself, the others that are the same, and what of it is shown. */
export interface Card {
  readonly bar: number
  readonly also: readonly number[]
  readonly as: AsBar | null
  /** What is shown, in ticks from the start of the bar. */
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
}

/** The bars of a part that are told, in order (a pickup first). Sameness is found by comparison, not by how the part was written. */
export function findCards(part: Part): readonly Card[] {
  const told: Bar[] = []
  const cards: Card[] = []
  for (const bar of part.bars) {
    if (bar.sameAs !== null) continue
    const as = bar.number === 0 ? null : nearestBar(part, bar, told)
    const also = part.bars.filter((other) => other.sameAs === bar.number).map((other) => other.number)
    cards.push({
      bar: bar.number,
      also,
      as,
      fromTicks: as?.untilTicks ?? 0,
      toTicks: as?.fromTicks ?? bar.length,
    })
    if (bar.number > 0) told.push(bar)
  }
  return cards
}

/** The earlier told bar from which this one differs in the shortest stretch of whole beats, when that is half the bar at most. */
function nearestBar(part: Part, bar: Bar, told: readonly Bar[]): AsBar | null {
  const beats = beatCount(bar)
  let best: AsBar | null = null
  let bestBeats = Math.ceil(beats / 2) + 1
  for (const other of told) {
    const differing = differingBeats(part, bar, other)
    if (differing === null) continue
    const stretch = wholeStretch(bar, other, differing)
    if (stretch === null || stretch.to - stretch.from >= Math.min(bestBeats, beats)) continue
    bestBeats = stretch.to - stretch.from
    best = {
      bar: other.number,
      untilTicks: stretch.from * bar.beatTicks,
      fromTicks: Math.min(stretch.to * bar.beatTicks, bar.length),
    }
  }
  return best
}

/** The beats from the first to behind the last that differ, widened so that no cut of either bar is torn. */
function wholeStretch(
  bar: Bar,
  other: Bar,
  differing: readonly number[],
): { readonly from: number; readonly to: number } | null {
  const first = differing[0]
  const last = differing.at(-1)
  if (first === undefined || last === undefined) return null
  let from = first
  let to = last + 1
  for (let widened = true; widened; ) {
    widened = false
    for (const group of [...bar.groups, ...other.groups]) {
      const start = Math.floor(group.at / bar.beatTicks)
      const end = Math.ceil((group.at + group.length) / bar.beatTicks)
      if (start < to && end > from && (start < from || end > to)) {
        from = Math.min(from, start)
        to = Math.max(to, end)
        widened = true
      }
    }
  }
  return { from, to }
}
