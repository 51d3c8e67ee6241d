import type { Ticks } from '@barwise/parser'
import { beatAt } from './count-name.ts'
import { EMPTY_HAND } from './hand.ts'
import type { Instruction, Item } from './instruction.ts'
import { joinBeats } from './join-beats.ts'
import { repeatedBeats } from './repeated-beats.ts'
import { tellOver } from './tell-over.ts'
import { tellEvents } from './tell-run.ts'
import { pass, type State, type Telling } from './telling.ts'

/**
 * The items of a stretch of a bar, beat by beat, each followed by the alternatives that start in it: what is described in one is
 * known in the next. Remarks are left to the caller. Ticks from the start of the bar. `eachBeat` tells beats that are others again too.
 */
export function tellBar(
  telling: Telling,
  fromTicks: Ticks,
  toTicks: Ticks,
  { eachBeat = false }: { readonly eachBeat?: boolean } = {},
): readonly Item[] {
  const { bar } = telling
  const state: State = { hand: EMPTY_HAND, previous: null, aside: false, announced: new Set(), eased: false }
  for (const event of bar.events) if (event.at < fromTicks) pass(telling, state, event)
  const spans = joinBeats(bar, fromTicks, toTicks)
  const repeats = eachBeat ? [] : repeatedBeats(bar, spans)
  const items: Item[] = [...alternativesIn(telling, 0, fromTicks)]
  spans.forEach((span, i) => {
    const events = bar.events.filter((event) => event.at >= span.fromTicks && event.at < span.toTicks)
    const from = beatAt(bar, span.fromTicks)
    const to = from + span.beats - 1
    const shared = { kind: 'beat' as const, from, to, fromTicks: span.fromTicks, toTicks: span.toTicks }
    const repeated = repeats[i]
    if (repeated != null) {
      for (const event of events) pass(telling, state, event)
      const model = { beat: beatAt(bar, repeated.fromTicks), through: beatAt(bar, repeated.toTicks - 1) }
      const last = items.at(-1)
      const before = last?.instructions[0]
      const joins = last !== undefined && before?.kind === 'as-beat' && goesOn(before, model)
      const item = joins ? { ...last, to, toTicks: span.toTicks } : shared
      const told = { kind: 'as-beat' as const, fromTicks: item.fromTicks, toTicks: span.toTicks, ...model }
      items.splice(joins ? -1 : items.length, 1, { ...item, instructions: [told] })
      // Other ways to play one of several beats that are repeated together follow when all of these are told.
      const together = repeated.toTicks - repeated.fromTicks
      if ((span.toTicks - item.fromTicks) % together === 0)
        items.push(...alternativesIn(telling, span.toTicks - together, span.toTicks))
      return
    }
    const over = tellOver(telling, state, span.fromTicks, span.toTicks)
    if (over?.kind === 'over' && over.name === state.hand.shape)
      state.hand = { ...state.hand, told: over.name !== null }
    const told = shapeFirst(tellEvents(telling, state, events))
    items.push({ ...shared, instructions: [...(over === null ? [] : [over]), ...told] })
    const asides = alternativesIn(telling, span.fromTicks, span.toTicks)
    items.push(...asides)
    // What an alternative told last must not be taken for what the hand holds.
    if (asides.length > 0) state.hand = { ...state.hand, told: false }
  })
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

/** Whether a beat that is another again joins the item before: by the same beat, or by the same beats in their order. */
function goesOn(
  before: Extract<Instruction, { kind: 'as-beat' }>,
  model: { readonly beat: number; readonly through: number },
): boolean {
  return before.beat === model.beat && before.through === model.through
}
