import type { Bar, Ticks } from '@barwise/parser'
import { beatCount } from './bar-compare.ts'

/** Beats that are told together, in ticks from the start of the bar. */
export interface BeatSpan {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly beats: number
}

/** Beats joined where nothing begins in one, at the start with the first in which something does, or where a cut goes over several. */
export function joinBeats(bar: Bar, fromTicks: Ticks, toTicks: Ticks): readonly BeatSpan[] {
  const spans: BeatSpan[] = []
  const first = Math.floor(fromTicks / bar.beatTicks)
  for (let beat = first; beat < beatCount(bar) && beat * bar.beatTicks < toTicks; beat++) {
    const at = beat * bar.beatTicks
    const end = Math.min(at + bar.beatTicks, bar.length)
    const begins = bar.events.some((event) => event.at >= at && event.at < end)
    const torn = bar.groups.some((group) => group.at < at && group.at + group.length > at)
    const last = spans.at(-1)
    const waits = last !== undefined && !bar.events.some((one) => one.at >= last.fromTicks && one.at < last.toTicks)
    if (last !== undefined && (torn || !begins || waits))
      spans[spans.length - 1] = { ...last, toTicks: end, beats: last.beats + 1 }
    else spans.push({ fromTicks: at, toTicks: end, beats: 1 })
  }
  return spans
}
