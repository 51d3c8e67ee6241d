import type { Event, Strike } from '@barwise/parser'
import { announceCuts } from './announce-cut.ts'
import { countName, type Frame, frameAt, frameSlot } from './count-name.ts'
import { playsAlike } from './hand.ts'
import type { Instruction, Silencing } from './instruction.ts'
import { easing, silencing, travel } from './silencing.ts'
import { styled, tellStrike, tellUnstruck } from './tell-strike.ts'
import type { State, Telling } from './telling.ts'

/** Tells events in order, alike ones side by side as one run. */
export function tellEvents(telling: Telling, state: State, events: readonly Event[]): readonly Instruction[] {
  const told: Instruction[] = []
  let before: Event | null = null
  for (let i = 0; i < events.length; ) {
    const event = events[i]
    if (event === undefined) break
    const run = runFrom(telling, events, i)
    const last = run.at(-1) ?? event
    const next =
      events[i + run.length] ?? telling.bar.events.find((other) => other.at >= last.at + last.duration) ?? null
    told.push(...tellRun(telling, state, run, { before, next }))
    before = last
    state.previous = before
    i += run.length
  }
  return told
}

/** Events from `i` on that are told together: alike, one slot each, next to each other in one stretch. */
function runFrom(telling: Telling, events: readonly Event[], i: number): readonly Event[] {
  const first = events[i]
  if (first === undefined) return []
  const frame = frameAt(telling.bar, first.at)
  const run: Event[] = [first]
  for (let k = i + 1; k < events.length; k++) {
    const last = run.at(-1)
    const next = events[k]
    if (last === undefined || next === undefined || !continues(telling, frame, last, next)) break
    run.push(next)
  }
  return run
}

function continues({ bar, everyRing }: Telling, frame: Frame, last: Event, next: Event): boolean {
  if (last.duration !== frameSlot(frame)) return false
  const there = frameAt(bar, next.at)
  if (there.at !== frame.at || there.length !== frame.length || next.at !== last.at + last.duration) return false
  if (last.kind === 'scratch' && next.kind === 'scratch') {
    const handAlike = (last.stroke === 'pluck') === (next.stroke === 'pluck')
    const alike = handAlike && last.marks.join() === next.marks.join() && last.palmMuted === next.palmMuted
    return alike && last.strings?.join() === next.strings?.join() && (last.strings === null) === (next.strings === null)
  }
  if (last.kind !== 'strike' || next.kind !== 'strike') return false
  if (last.stroke === null || next.stroke === null || next.duration !== frameSlot(frame)) return false
  if ((last.stroke === 'pluck') !== (next.stroke === 'pluck')) return false
  const plain = (strike: Strike): boolean =>
    strike.technique === null && (everyRing || !strike.marks.includes('ring')) && !strike.marks.includes('slide-off')
  return plain(last) && plain(next) && playsAlike(last, next)
}

/** What easing is, the first time a part asks for it; another way to play a beat is no place for it. */
function explain(
  { memory }: Telling,
  { aside }: State,
  how: Silencing,
  ticks: Pick<Instruction, 'fromTicks' | 'toTicks'>,
): readonly Instruction[] {
  if (how !== 'ease' || memory.eased || aside) return []
  memory.eased = true
  return [{ kind: 'explain-ease', ...ticks }]
}

interface Around {
  readonly before: Event | null
  readonly next: Event | null
}

function tellRun(telling: Telling, state: State, run: readonly Event[], around: Around): readonly Instruction[] {
  const { bar } = telling
  const first = run[0]
  const last = run.at(-1)
  if (first === undefined || last === undefined) return []
  const frame = frameAt(bar, first.at)
  const before = around.before
  const adjacent =
    before !== null &&
    !(bar.number === 0 && before.kind === 'rest' && !state.aside) &&
    before.at + before.duration === first.at &&
    before.duration === frameSlot(frameAt(bar, before.at)) &&
    frameAt(bar, before.at).at === frame.at &&
    frameAt(bar, before.at).length === frame.length
  const ticks = { fromTicks: first.at, toTicks: last.at + last.duration }
  const splits = announceCuts(telling, state, frame)
  const starts = before === null && first.at % bar.beatTicks === 0
  const place = countName(bar, first.at)
  const ordinalStart = splits.length > 0 && first.at === frame.at
  const placed = {
    ...ticks,
    place,
    splits,
    sayPlace: !(starts || ordinalStart || (adjacent && first.kind !== 'strike')),
  }
  if (first.kind === 'rest') {
    if (bar.number === 0 && state.previous === null && frame.kind === 'beat' && !state.aside) return []
    const how = silencing(state.previous)
    return [
      ...explain(telling, state, how, ticks),
      { kind: 'rest', ...placed, silencing: how, wholeBar: first.at === 0 && ticks.toTicks >= bar.length },
    ]
  }
  if (first.kind === 'scratch') {
    const strokes = run.flatMap((event) => (event.kind === 'scratch' ? [event.stroke] : []))
    const how = easing(state, frame)
    return [
      ...explain(telling, state, how, ticks),
      {
        kind: 'scratch',
        ...placed,
        strokes,
        styled: styled(bar, strokes),
        strings: first.strings,
        marks: first.marks,
        palmMuted: first.palmMuted,
        silencing: how,
        travelTo: first.marks.length > 0 || first.palmMuted ? null : travel(state, around.next, telling.memory),
      },
    ]
  }
  if (first.stroke === null) return tellUnstruck(telling, state, first, placed)
  return tellStrike(telling, state, run, placed)
}
