import type { Bar, Event, Part, Strike, Ticks } from '@barwise/parser'
import { beatCount, beatKey, heldInto } from './bar-compare.ts'
import {
  beatAt,
  beatStart,
  type Counted,
  countName,
  type Frame,
  frameAround,
  frameAt,
  frameSlot,
  nameIn,
} from './count-name.ts'
import { describe, EMPTY_HAND, type Hand, inPlace, playsAlike, type ShapeMemory, shapeOf, target } from './hand.ts'
import type { Instruction, Item, Lasting, Ringing, Silencing, SlideFrom, Split } from './instruction.ts'
import { lowestFret, notesHeld, pressesOf } from './press.ts'

/** What is told of a bar, or of another way to play a stretch of it. */
export interface Telling {
  readonly part: Part
  readonly bar: Bar
  readonly memory: ShapeMemory
  /** Whether everything rings, said once above. */
  readonly everyRing: boolean
  /** The cut that every beat told has, announced once above: null when there is none. */
  readonly everyBeatIn: number | null
}

/** Where the telling stands. */
interface State {
  hand: Hand
  previous: Event | null
  /** Cuts announced. */
  readonly announced: Set<Ticks>
  /** Whether easing was told: after that only a sound that lasted is told to be eased. */
  eased: boolean
}

/** The items of a stretch of a bar, beat by beat, remarks and alternatives left to the caller. Ticks from the start of the bar. */
export function tellBar(telling: Telling, fromTicks: Ticks, toTicks: Ticks): readonly Item[] {
  const { bar } = telling
  const state: State = { hand: EMPTY_HAND, previous: null, announced: new Set(), eased: false }
  for (const event of bar.events) if (event.at < fromTicks) pass(telling, state, event)
  const spans = joinBeats(bar, fromTicks, toTicks)
  const items: Item[] = []
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
      continue
    }
    if (key !== null) toldBeats.set(key, from)
    const over = tellOver(telling, state, span.fromTicks, span.toTicks)
    items.push({ ...shared, instructions: [...(over === null ? [] : [over]), ...tellEvents(telling, state, events)] })
  }
  return items
}

/** The instructions of another way to play a stretch, told after what comes before it in the bar. */
export function tellAlternative(telling: Telling, events: readonly Event[], from: Ticks): readonly Instruction[] {
  const state: State = { hand: EMPTY_HAND, previous: null, announced: new Set(), eased: true }
  for (const event of telling.bar.events) if (event.at < from) pass(telling, state, event)
  return tellEvents(telling, state, events)
}

function spanKey(telling: Telling, state: State, from: Ticks, events: readonly Event[]): string {
  const { bar } = telling
  const carried = events[0] !== undefined && events[0].at > from ? (state.previous?.kind ?? 'in') : ''
  return `${carried}|${beatKey(bar, Math.floor(from / bar.beatTicks))}`
}

/** Takes note of an event that is not told. */
function pass(telling: Telling, state: State, event: Event): void {
  state.previous = event
  if (event.kind !== 'strike') return
  const named = target(event, state.hand, telling.memory)
  state.hand = { ...named.hand, told: false }
}

interface BeatSpan {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly beats: number
}

/** Beats joined where nothing begins in one, or where a cut goes over several. */
function joinBeats(bar: Bar, fromTicks: Ticks, toTicks: Ticks): readonly BeatSpan[] {
  const spans: BeatSpan[] = []
  const first = Math.floor(fromTicks / bar.beatTicks)
  for (let beat = first; beat < beatCount(bar) && beat * bar.beatTicks < toTicks; beat++) {
    const at = beat * bar.beatTicks
    const end = Math.min(at + bar.beatTicks, bar.length)
    const begins = bar.events.some((event) => event.at >= at && event.at < end)
    const torn = bar.groups.some((group) => group.at < at && group.at + group.length > at)
    const last = spans.at(-1)
    if (last !== undefined && (torn || !begins))
      spans[spans.length - 1] = { ...last, toTicks: end, beats: last.beats + 1 }
    else spans.push({ fromTicks: at, toTicks: end, beats: 1 })
  }
  return spans
}

/** What goes on over the start of a beat, or null when something begins there. */
function tellOver(telling: Telling, state: State, at: Ticks, until: Ticks): Instruction | null {
  const { bar, part, memory } = telling
  const first = bar.events.find((event) => event.at >= at)
  if (first !== undefined && first.at === at) return null
  const end = Math.min(first?.at ?? bar.length, until, bar.length)
  const held = state.previous === null ? heldInto(part, bar) : null
  const event = state.previous ?? held?.event ?? null
  if (event === null) return null
  const named = event.kind === 'strike' && event.stroke !== null ? shapeOf(event, memory) : undefined
  const plainly =
    event.kind === 'strike' && event.target.only === null && event.target.shift === 0 && event.target.added.length === 0
  const last = Math.max(at, end - 1)
  return {
    kind: 'over',
    fromTicks: at,
    toTicks: end,
    sound: event.kind,
    name: named !== undefined && plainly && held === null ? named.name : null,
    to: countName(bar, last),
    fromBarBefore: held !== null,
    swings: bar.stroke === 'alternate',
    wholeBar: first === undefined && at === 0,
  }
}

function tellEvents(telling: Telling, state: State, events: readonly Event[]): readonly Instruction[] {
  const told: Instruction[] = []
  let before: Event | null = null
  for (let i = 0; i < events.length; ) {
    const event = events[i]
    if (event === undefined) break
    const run = runFrom(telling.bar, events, i)
    const next =
      events[i + run.length] ?? telling.bar.events.find((other) => other.at >= event.at + event.duration) ?? null
    told.push(...tellRun(telling, state, run, { before, next }))
    before = run.at(-1) ?? event
    state.previous = before
    i += run.length
  }
  return told
}

/** Events from `i` on that are told together: alike, one slot each, next to each other in one stretch. */
function runFrom(bar: Bar, events: readonly Event[], i: number): readonly Event[] {
  const first = events[i]
  if (first === undefined) return []
  const frame = frameAt(bar, first.at)
  const run: Event[] = [first]
  for (let k = i + 1; k < events.length; k++) {
    const last = run.at(-1)
    const next = events[k]
    if (last === undefined || next === undefined || !continues(bar, frame, last, next)) break
    run.push(next)
  }
  return run
}

function continues(bar: Bar, frame: Frame, last: Event, next: Event): boolean {
  if (last.duration !== frameSlot(frame)) return false
  const there = frameAt(bar, next.at)
  if (there.at !== frame.at || there.length !== frame.length || next.at !== last.at + last.duration) return false
  if (last.kind === 'scratch' && next.kind === 'scratch') {
    const alike = last.marks.join() === next.marks.join() && last.palmMuted === next.palmMuted
    return alike && last.strings?.join() === next.strings?.join() && (last.strings === null) === (next.strings === null)
  }
  if (last.kind !== 'strike' || next.kind !== 'strike') return false
  if (last.stroke === null || next.stroke === null || next.duration !== frameSlot(frame)) return false
  if ((last.stroke === 'pluck') !== (next.stroke === 'pluck')) return false
  const plain = (strike: Strike): boolean =>
    strike.technique === null && !strike.marks.includes('ring') && !strike.marks.includes('slide-off')
  return plain(last) && plain(next) && playsAlike(last, next)
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
    !(bar.number === 0 && before.kind === 'rest') &&
    before.at + before.duration === first.at &&
    before.duration === frameSlot(frameAt(bar, before.at)) &&
    frameAt(bar, before.at).at === frame.at &&
    frameAt(bar, before.at).length === frame.length
  const ticks = { fromTicks: first.at, toTicks: last.at + last.duration }
  const split = announce(telling, state, frame)
  const starts = before === null && first.at % bar.beatTicks === 0
  const place = countName(bar, first.at)
  const ordinalStart = split !== null && first.at === frame.at
  const placed = {
    ...ticks,
    place,
    split,
    sayPlace: !(starts || ordinalStart || (adjacent && first.kind !== 'strike')),
  }
  if (first.kind === 'rest') {
    if (bar.number === 0 && state.previous === null && frame.kind === 'beat') return []
    return [{ kind: 'rest', ...placed, silencing: silencing(state.previous) }]
  }
  if (first.kind === 'scratch') {
    const strokes = run.flatMap((event) => (event.kind === 'scratch' ? [event.stroke] : []))
    return [
      {
        kind: 'scratch',
        ...placed,
        strokes,
        styled: styled(bar, strokes),
        strings: first.strings,
        marks: first.marks,
        palmMuted: first.palmMuted,
        silencing: easing(state, frame),
        travelTo: travel(state, around.next, telling.memory),
      },
    ]
  }
  if (first.stroke === null) return tellUnstruck(telling, state, first, placed)
  return tellStrike(telling, state, run, placed)
}

type Placed = Pick<Extract<Instruction, { kind: 'rest' }>, 'fromTicks' | 'toTicks' | 'place' | 'sayPlace' | 'split'>

function tellStrike(telling: Telling, state: State, run: readonly Event[], placed: Placed): readonly Instruction[] {
  const { bar, memory } = telling
  const strikes = run.flatMap((event) => (event.kind === 'strike' ? [event] : []))
  const first = strikes[0]
  const last = strikes.at(-1)
  if (first === undefined || last === undefined) return []
  const told: Instruction[] = []
  const shape = shapeOf(first, memory)
  if (shape !== undefined && !memory.described.includes(shape.name)) told.push(describe(shape, memory, placed))
  const previous = state.hand
  if (told.length > 0 && shape !== undefined) state.hand = inPlace(state.hand, shape)
  const { what, hand, lifted } = target(first, state.hand, memory)
  state.hand = hand
  const strokes = strikes.map((strike) => strike.stroke)
  const crosses = last.at + last.duration > (Math.floor(last.at / bar.beatTicks) + 1) * bar.beatTicks
  const early =
    crosses &&
    last.at % bar.beatTicks !== 0 &&
    hand.shape !== null &&
    previous.shape !== null &&
    hand.shape !== previous.shape
  told.push({
    kind: 'strike',
    ...placed,
    what,
    strokes,
    styled: styled(bar, strokes),
    marks: first.marks,
    palmMuted: first.palmMuted,
    rolled: first.rolled,
    slideFrom: slideFrom(first),
    lasting: telling.everyRing ? null : lasting(bar, last),
    ringing: telling.everyRing ? null : ringing(bar, first),
    early,
    lifted,
  })
  return told
}

function tellUnstruck(telling: Telling, state: State, event: Strike, placed: Placed): readonly Instruction[] {
  const { bar, memory } = telling
  const moved = event.notes.filter((note) => note.from !== 'held')
  const last = state.previous ?? lastBefore(telling)
  const before = last?.kind === 'strike' ? last.notes.filter((note) => note.fret !== null) : []
  const stops = before
    .map((note) => note.string)
    .filter((string) => !event.notes.some((note) => note.string === string))
  const steps = new Set(moved.map((note) => (note.fret ?? 0) - (note.fromFret ?? note.fret ?? 0)))
  const step = [...steps][0] ?? 0
  const whole =
    steps.size === 1 &&
    step !== 0 &&
    moved.length === event.notes.length &&
    moved.length === before.length &&
    moved.length > 1
  state.hand = target(event, state.hand, memory).hand
  return [
    {
      kind: 'unstruck',
      ...placed,
      technique: event.technique ?? 'slide',
      presses: pressesOf(notesHeld(moved)).map((press) => ({ ...press, flat: false })),
      together: event.technique === 'slide' && whole ? step : null,
      stops,
      marks: event.marks,
      palmMuted: event.palmMuted,
      lasting: lasting(bar, event),
      ringing: ringing(bar, event),
    },
  ]
}

/** The event before a bar's first. */
function lastBefore({ part, bar }: Telling): Event | null {
  return (
    part.bars
      .slice(0, part.bars.indexOf(bar))
      .findLast((one) => one.events.length > 0)
      ?.events.at(-1) ?? null
  )
}

/** Whether the way of striking in force says the direction of every stroke by itself. */
function styled(bar: Bar, strokes: readonly (string | null)[]): boolean {
  if (bar.stroke === 'down') return strokes.every((stroke) => stroke === 'down')
  return bar.stroke === 'pluck' && strokes.every((stroke) => stroke === 'pluck')
}

/** How the hand silences what sounds just before, if anything does. */
function silencing(previous: Event | null): Silencing {
  if (previous?.kind !== 'strike' || previous.marks.includes('slide-off')) return null
  return previous.notes.some((note) => note.fret === 0) ? 'flat' : 'ease'
}

/** The same before a scratch: told the first time in a card, and again after a sound that lasted. */
function easing(state: State, frame: Frame): Silencing {
  const how = silencing(state.previous)
  const lasted = state.previous !== null && state.previous.duration > frameSlot(frame)
  const told = how !== null && (!state.eased || lasted)
  if (told) state.eased = true
  return told ? how : null
}

/** The fret that the hand travels to during scratches: only when the next stroke lies two frets or more away. */
function travel(state: State, next: Event | null, memory: ShapeMemory): number | null {
  if (next?.kind !== 'strike' || next.stroke === null) return null
  if (state.hand.shape === null || next.target.shape === null || next.target.shape === state.hand.shape) return null
  const shape = memory.shapes.get(state.hand.shape)
  const here =
    shape === undefined
      ? null
      : lowestFret(shape.frets.flatMap((fret, i) => (fret === null ? [] : [{ string: i + 1, fret, finger: null }])))
  const there = lowestFret(notesHeld(next.notes))
  return here !== null && there !== null && Math.abs(here - there) >= 2 ? there : null
}

function slideFrom(strike: Strike): SlideFrom | null {
  if (strike.technique !== 'slide') return null
  const slid = strike.notes.filter((note) => note.from === 'slid')
  if (slid.length === strike.notes.length) {
    if (slid.every((note) => note.fromFret === null)) return { kind: 'below' }
    const steps = new Set(slid.map((note) => (note.fromFret === null ? null : (note.fret ?? 0) - note.fromFret)))
    const step = [...steps][0]
    if (steps.size === 1 && step !== null && step !== undefined) return { kind: 'frets', frets: step }
  }
  return { kind: 'each', strings: slid.map((note) => ({ string: note.string, fret: note.fromFret })) }
}

/** How long an event goes on past its slot, null when it does not. */
function lasting(bar: Bar, event: Event): Lasting | null {
  const end = event.at + event.duration
  if (end > bar.length) return { kind: 'bar-line' }
  if (event.duration <= frameSlot(frameAt(bar, event.at))) return null
  const beatEnd = (Math.floor(event.at / bar.beatTicks) + 1) * bar.beatTicks
  if (end <= beatEnd) return { kind: 'beat' }
  const lastBeat = Math.floor((end - 1) / bar.beatTicks)
  const goesInto = end < bar.length && end % bar.beatTicks !== 0
  if (goesInto && lastBeat * bar.beatTicks === beatEnd) return { kind: 'over' }
  const shownEnd = goesInto ? lastBeat * bar.beatTicks : end
  return { kind: 'through', to: lastCount(bar, shownEnd) }
}

/** The last place before a tick, said by its number when the sound fills that beat. */
function lastCount(bar: Counted, end: Ticks): ReturnType<typeof countName> {
  const beat = beatAt(bar, end - 1)
  if (end % bar.beatTicks === 0) return { kind: 'count', beat, name: 'number', late: false }
  return countName(bar, end - 1)
}

function ringing(bar: Bar, event: Strike): Ringing | null {
  const ends = event.notes.flatMap((note) => (note.ringsTo === null ? [] : [note.ringsTo]))
  if (!event.marks.includes('ring')) return null
  if (ends.length === 0) return { kind: 'own' }
  const end = Math.max(...ends)
  const last = bar.events.findLast((one) => one.kind === 'strike')
  if (end > bar.length) return last === event ? { kind: 'bar-line' } : { kind: 'own' }
  const stop = bar.events.find((one) => one.at === end)
  return stop?.kind === 'rest' || stop?.kind === 'scratch'
    ? { kind: 'through', to: countName(bar, end - 1) }
    : { kind: 'own' }
}

/** Announces a cut at its first event, unless all beats have it and it stands above. */
function announce(telling: Telling, state: State, frame: Frame): Split | null {
  const { bar, everyBeatIn } = telling
  if (frame.kind === 'beat' || state.announced.has(frame.at * 64 + frame.parts)) return null
  if (frame.wholeBeat && everyBeatIn === frame.parts) return null
  state.announced.add(frame.at * 64 + frame.parts)
  if (frame.wholeBeat) return { parts: frame.parts, over: { kind: 'beat', beat: frame.beat } }
  if (frame.at % bar.beatTicks === 0 && frame.length % bar.beatTicks === 0) {
    const to = beatAt(bar, frame.at + frame.length - 1)
    return { parts: frame.parts, over: { kind: 'beats', from: frame.beat, to } }
  }
  const around = frameAround(bar, frame)
  const places: ReturnType<typeof countName>[] = []
  for (let at = frame.at; at < frame.at + frame.length; at += frameSlot(around)) places.push(nameIn(bar, around, at))
  return { parts: frame.parts, over: { kind: 'places', places } }
}

/** The ticks at which an item's beats start and end, from their numbers. */
export function beatTicksOf(
  bar: Counted,
  from: number,
  to: number,
): { readonly fromTicks: Ticks; readonly toTicks: Ticks } {
  return { fromTicks: beatStart(bar, from), toTicks: Math.min(beatStart(bar, to) + bar.beatTicks, bar.length) }
}
