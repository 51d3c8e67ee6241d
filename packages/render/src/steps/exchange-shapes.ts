import type { Bar, Event, Part, Strike, Ticks } from '@barwise/parser'
import { beatCount, heldInto, sameFrame, soundKey } from './bar-compare.ts'
import { type ShapeMemory, shapeOf } from './hand.ts'
import type { Instruction, Item } from './instruction.ts'
import { everyStrokeRings } from './lasting.ts'
import { tellBar } from './tell-bar.ts'

/** A shape played in the place of another, by their names. */
export interface Exchange {
  readonly shape: string
  readonly inPlaceOf: string
}

/** Beats of a bar that are not as in another with its shapes exchanged, and the exchanges. */
export interface Exchanged {
  readonly exchanges: readonly Exchange[]
  /** 0-based, in order. */
  readonly differing: readonly number[]
}

/**
 * How a bar follows from another by exchanging whole shapes, each for one other all through; null when no shape is exchanged.
 * A beat follows when its events are the same but for the shape: ticks, strokes, dynamics, and the strings where some are chosen.
 */
export function exchangeShapes(part: Part, bar: Bar, other: Bar, memory: ShapeMemory): Exchanged | null {
  if (!sameFrame(bar, other)) return null
  const mapping = new Map<string, string>()
  const differing: number[] = []
  for (let beat = 0; beat < beatCount(bar); beat++) {
    const extended = new Map(mapping)
    if (beatFollows(part, { bar, other, beat }, extended, memory)) {
      for (const [from, to] of extended) mapping.set(from, to)
    } else differing.push(beat)
  }
  const exchanges = [...mapping]
    .filter(([from, to]) => from !== to)
    .map(([inPlaceOf, shape]): Exchange => ({ shape, inPlaceOf }))
  return exchanges.length === 0 ? null : { exchanges, differing }
}

/** Whether a beat follows; the shapes it exchanges are added to `mapping`. */
function beatFollows(
  part: Part,
  { bar, other, beat }: { readonly bar: Bar; readonly other: Bar; readonly beat: number },
  mapping: Map<string, string>,
  memory: ShapeMemory,
): boolean {
  const from = beat * bar.beatTicks
  const to = from + bar.beatTicks
  const mine = soundsIn(part, bar, from, to)
  const theirs = soundsIn(part, other, from, to)
  return (
    mine.length === theirs.length &&
    groupsIn(bar, from, to) === groupsIn(other, from, to) &&
    mine.every((one, i) => {
      const there = theirs[i]
      const timed = there !== undefined && one.at === there.at && Math.min(one.end, to) === Math.min(there.end, to)
      return timed && soundFollows(one.event, there.event, mapping, memory)
    })
  )
}

interface Sounding {
  readonly event: Event
  readonly at: Ticks
  readonly end: Ticks
}

/** What starts in a stretch, and what goes on over its start. */
function soundsIn(part: Part, bar: Bar, from: Ticks, to: Ticks): readonly Sounding[] {
  const held = heldInto(part, bar)
  const before = held === null ? [] : [{ event: held.event, at: -1, end: held.until }]
  const own = bar.events.map((event) => ({ event, at: event.at, end: event.at + event.duration }))
  return [...before, ...own].filter(({ at, end }) => at < to && end > from)
}

function groupsIn(bar: Bar, from: Ticks, to: Ticks): string {
  const inside = bar.groups.filter((group) => group.at >= from && group.at < to)
  return inside.map((group) => `${group.at}:${group.length}/${group.parts}`).join(' ')
}

function soundFollows(mine: Event, theirs: Event, mapping: Map<string, string>, memory: ShapeMemory): boolean {
  if (mine.kind !== 'strike' || theirs.kind !== 'strike') return soundKey(mine) === soundKey(theirs)
  const [to, from] = [mine.target.shape, theirs.target.shape]
  if (to === null || from === null) return to === from && soundKey(mine) === soundKey(theirs)
  const known = mapping.get(from)
  if (known !== undefined && known !== to) return false
  mapping.set(from, to)
  return to === from ? soundKey(mine) === soundKey(theirs) : strikeFollows(mine, theirs, memory)
}

/** Whether two strokes differ in nothing but the shape, and no string has to be told anew. */
function strikeFollows(mine: Strike, theirs: Strike, memory: ShapeMemory): boolean {
  const plain = (strike: Strike): boolean =>
    strike.technique === null && strike.target.added.length === 0 && shapeOf(strike, memory) !== undefined
  const strings = (strike: Strike): string =>
    strike.target.only === null ? 'all' : strike.notes.map((note) => note.string).join()
  const manner = (strike: Strike): string => soundKey({ ...strike, notes: [] })
  return (
    plain(mine) &&
    plain(theirs) &&
    mine.target.shift === theirs.target.shift &&
    strings(mine) === strings(theirs) &&
    manner(mine) === manner(theirs)
  )
}

/**
 * Whether everything that is told of the other bar outside a stretch is true of this bar once the names are exchanged: where the
 * hand eases or travels, what comes early, how long it lasts. Ticks from the start of the bar.
 */
export function toldAlike(
  part: Part,
  bars: { readonly bar: Bar; readonly other: Bar },
  exchanges: readonly Exchange[],
  context: { readonly memory: ShapeMemory; readonly fromTicks: Ticks; readonly toTicks: Ticks },
): boolean {
  const { memory, fromTicks, toTicks } = context
  const mapping = new Map(exchanges.map(({ shape, inPlaceOf }) => [inPlaceOf, shape]))
  const everyRing = everyStrokeRings(bars.other, { fromTicks: 0, toTicks: bars.other.length })
  const outside = (bar: Bar): readonly Item[] =>
    tellBar({ part, bar, memory, everyRing, everyBeatIn: null }, 0, bar.length).filter(
      (item) => item.kind === 'beat' && (item.fromTicks < fromTicks || item.toTicks > toTicks),
    )
  const mine = outside(bars.bar)
  const theirs = outside(bars.other)
  const whole = [...mine, ...theirs].every((item) => item.toTicks <= fromTicks || item.fromTicks >= toTicks)
  const renamed = theirs.map((item) => ({
    ...item,
    instructions: item.instructions.map((told) => rename(told, mapping)),
  }))
  return whole && JSON.stringify(mine) === JSON.stringify(renamed)
}

function rename(told: Instruction, mapping: ReadonlyMap<string, string>): Instruction {
  if (told.kind === 'over' && told.name !== null) return { ...told, name: mapping.get(told.name) ?? told.name }
  if (told.kind !== 'strike' || told.what.kind !== 'shape') return told
  const { name } = told.what
  return { ...told, what: { ...told.what, name: mapping.get(name) ?? name } }
}
