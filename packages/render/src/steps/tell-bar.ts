import type { Bar, Event, Ticks } from '@barwise/parser'
import { beatCount, beatKey } from './bar-compare.ts'
import { beatAt } from './count-name.ts'
import { EMPTY_HAND } from './hand.ts'
import type { Instruction, Item } from './instruction.ts'
import { tellOver } from './tell-over.ts'
import { tellEvents } from './tell-run.ts'
import { pass, type State, type Telling } from './telling.ts'

/**
 * The items of a stretch of a bar, beat by beat, each followed by the alternatives that start in it: what is described in one is
 * known in the next. Remarks are left to the caller. Ticks from the start of the bar.
 */
export function tellBar(telling: Telling, fromTicks: Ticks, toTicks: Ticks): readonly Item[] {
  const { bar } = telling
  const state: State = { hand: EMPTY_HAND, previous: null, aside: false, announced: new Set(), eased: false }
  for (const event of bar.events) if (event.at < fromTicks) pass(telling, state, event)
  const spans = joinBeats(bar, fromTicks, toTicks)
  const items: Item[] = [...alternativesIn(telling, 0, fromTicks)]
  const toldBeats = new Map<string, number>()
  for (const span of spans) {
    const events = bar.events.filter((event) => event.at >= span.fromTicks && event.at < span.toTicks)
    const key = span.beats === 1 && events.length > 1 ? spanKey(telling, state, span.fromTicks, events) : null
    const earlier = key === null ? undefined : toldBeats.get(key)
    const from = beatAt(bar, span.fromTicks)
    const shared = {
      kind: 'beat' as const,
      from,
      to: from + span.beats - 1,
      fromTicks: span.fromTicks,
      toTicks: span.toTicks,
    }
    if (earlier !== undefined) {
      for (const event of events) pass(telling, state, event)
      const last = items.at(-1)
      const repeated = last?.instructions[0]
      if (last !== undefined && repeated?.kind === 'as-beat' && repeated.beat === earlier) {
        items[items.length - 1] = {
          ...last,
          to: shared.to,
          toTicks: shared.toTicks,
          instructions: [{ ...repeated, toTicks: shared.toTicks }],
        }
      } else {
        items.push({
          ...shared,
          instructions: [{ kind: 'as-beat', fromTicks: shared.fromTicks, toTicks: shared.toTicks, beat: earlier }],
        })
      }
      items.push(...alternativesIn(telling, span.fromTicks, span.toTicks))
      continue
    }
    if (key !== null) toldBeats.set(key, from)
    const over = tellOver(telling, state, span.fromTicks, span.toTicks)
    if (over?.kind === 'over' && over.name === state.hand.shape)
      state.hand = { ...state.hand, told: over.name !== null }
    const told = shapeFirst(tellEvents(telling, state, events))
    items.push({ ...shared, instructions: [...(over === null ? [] : [over]), ...told] })
    const asides = alternativesIn(telling, span.fromTicks, span.toTicks)
    items.push(...asides)
    // What an alternative told last must not be taken for what the hand holds.
    if (asides.length > 0) state.hand = { ...state.hand, told: false }
  }
  items.push(...alternativesIn(telling, toTicks, bar.length))
  return items
}

/** The other ways to play stretches that start between two ticks, each told after what comes before it in the bar. */
export function alternativesIn(telling: Telling, fromTicks: Ticks, toTicks: Ticks): readonly Item[] {
  const { bar } = telling
  return bar.alternatives
    .filter(({ at }) => at >= fromTicks && at < toTicks)
    .map(({ at, length, events, groups }) => {
      const around = bar.groups.filter((group) => group.at < at || group.at >= at + length)
      const inner = { ...telling, everyRing: false, bar: { ...bar, groups: [...around, ...groups] } }
      const state: State = { hand: EMPTY_HAND, previous: null, aside: true, announced: new Set(), eased: true }
      for (const event of bar.events) if (event.at < at) pass(inner, state, event)
      return {
        kind: 'or',
        from: beatAt(bar, at),
        to: beatAt(bar, at + length - 1),
        fromTicks: at,
        toTicks: at + length,
        instructions: shapeFirst(tellEvents(inner, state, events)),
      }
    })
}

/** A grip that is described in a beat before anything is struck in it is described before what is eased, scratched or silent there. */
function shapeFirst(told: readonly Instruction[]): readonly Instruction[] {
  const at = told.findIndex(({ kind }) => kind === 'describe' || kind === 'describe-like')
  const before = told.slice(0, Math.max(at, 0))
  const still = before.every(({ kind }) => kind === 'rest' || kind === 'scratch' || kind === 'explain-ease')
  const shape = told[at]
  return shape === undefined || !still ? told : [shape, ...before, ...told.slice(at + 1)]
}

function spanKey(telling: Telling, state: State, from: Ticks, events: readonly Event[]): string {
  const { bar } = telling
  const carried = events[0] !== undefined && events[0].at > from ? (state.previous?.kind ?? 'in') : ''
  return `${carried}|${beatKey(bar, Math.floor(from / bar.beatTicks))}`
}

interface BeatSpan {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly beats: number
}

/** Beats joined where nothing begins in one, at the start with the first in which something does, or where a cut goes over several. */
function joinBeats(bar: Bar, fromTicks: Ticks, toTicks: Ticks): readonly BeatSpan[] {
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
