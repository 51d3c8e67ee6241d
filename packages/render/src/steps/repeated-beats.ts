import type { Bar, Event, Ticks } from '@barwise/parser'
import { beatKey } from './bar-compare.ts'
import type { BeatSpan } from './join-beats.ts'

/** The earlier beats that a beat is part of the repetition of: one, or several in order. Ticks from the start of the bar. */
export interface Repeated {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
}

/**
 * For each of the beats told of a bar the earlier ones by which it is told, null where it is told itself. Several beats in order
 * are told by those just before them (`1 2 1 2`), others one by one; a beat with a single event is told itself unless it is one of
 * three alike in a row: its own words are as short.
 */
export function repeatedBeats(bar: Bar, spans: readonly BeatSpan[]): readonly (Repeated | null)[] {
  const eventsOf = spans.map((span) =>
    bar.events.filter((event) => event.at >= span.fromTicks && event.at < span.toTicks),
  )
  const keys = spans.map((span, i) => spanKey(bar, span, eventsOf[i] ?? []))
  const found: (Repeated | null)[] = []
  while (found.length < spans.length) {
    const i = found.length
    const period = periodAt(keys, i)
    const source = spans[i - period]
    if (period > 0 && source !== undefined) {
      const model = modelOf(found.slice(i - period, i)) ?? {
        fromTicks: source.fromTicks,
        toTicks: source.fromTicks + period * bar.beatTicks,
      }
      found.push(...Array.from({ length: period }, () => model))
      continue
    }
    const earlier = keys.indexOf(keys[i] ?? null)
    const span = spans[earlier]
    const single = (eventsOf[i]?.length ?? 0) < 2 && !(earlier < i && inRow(keys, i))
    found.push(keys[i] === null || earlier >= i || single || span === undefined ? null : span)
  }
  return found
}

/** What beats in order are all told by already, where they are told by other beats as one. */
function modelOf(told: readonly (Repeated | null)[]): Repeated | null {
  const first = told[0] ?? null
  return told.every((one) => one === first) ? first : null
}

/** How many beats from `i` on repeat, in order, as many just before them that are not all alike: 0 when none do. */
function periodAt(keys: readonly (string | null)[], i: number): number {
  for (let period = Math.min(i, keys.length - i); period > 1; period--) {
    const mine = keys.slice(i, i + period)
    const alike = mine.every((key, k) => key !== null && key === keys[i - period + k])
    if (alike && new Set(mine).size > 1) return period
  }
  return 0
}

/** Whether a beat is the second of three alike in a row, or a later one. */
function inRow(keys: readonly (string | null)[], i: number): boolean {
  if (keys[i] !== keys[i - 1]) return false
  return keys[i] === keys[i + 1] || keys[i] === keys[i - 2]
}

/** A beat as text to compare with others of its bar; null where it is joined with the next, or nothing begins in it. */
function spanKey(bar: Bar, { fromTicks, beats }: BeatSpan, events: readonly Event[]): string | null {
  const first = events[0]
  if (beats > 1 || first === undefined) return null
  const carried = first.at > fromTicks ? (bar.events.findLast((event) => event.at < fromTicks)?.kind ?? 'in') : ''
  const last = events.at(-1) ?? first
  const on = last.at + last.duration > fromTicks + bar.beatTicks ? last.kind : ''
  return `${carried}|${beatKey(bar, Math.floor(fromTicks / bar.beatTicks))}|${on}`
}
