import type { Bar, Event, Part, Strike, Ticks } from '@barwise/parser'
import { type BarProfile, mannerKey, soundKey } from './bar-compare.ts'
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
export function exchangeShapes(mine: BarProfile, theirs: BarProfile, memory: ShapeMemory): Exchanged | null {
  if (mine.frame !== theirs.frame) return null
  const mapping = new Map<string, string>()
  const differing: number[] = []
  for (let beat = 0; beat < mine.beats.length; beat++) {
    const extended = new Map(mapping)
    if (mine.manners[beat] === theirs.manners[beat] && beatFollows(mine, theirs, { beat, mapping: extended, memory })) {
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
  mine: BarProfile,
  theirs: BarProfile,
  context: { readonly beat: number; readonly mapping: Map<string, string>; readonly memory: ShapeMemory },
): boolean {
  const from = context.beat * mine.bar.beatTicks
  const to = from + mine.bar.beatTicks
  const own = soundsIn(mine, from, to)
  const other = soundsIn(theirs, from, to)
  return (
    own.length === other.length &&
    own.every((one, i) => {
      const there = other[i]
      const timed = there !== undefined && one.at === there.at && Math.min(one.end, to) === Math.min(there.end, to)
      return timed && soundFollows(one.event, there.event, context.mapping, context.memory)
    })
  )
}

interface Sounding {
  readonly event: Event
  readonly at: Ticks
  readonly end: Ticks
}

/** What starts in a stretch, and what goes on over its start. */
function soundsIn({ bar, heldIn }: BarProfile, from: Ticks, to: Ticks): readonly Sounding[] {
  const before = heldIn === null ? [] : [{ event: heldIn.event, at: -1, end: heldIn.until }]
  const own = bar.events.map((event) => ({ event, at: event.at, end: event.at + event.duration }))
  return [...before, ...own].filter(({ at, end }) => at < to && end > from)
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
  return plain(mine) && plain(theirs) && mannerKey(mine) === mannerKey(theirs)
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
    tellBar({ part, bar, memory, everyRing, everyBeatIn: null }, 0, bar.length, { eachBeat: true }).filter(
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
