import type { Bar, Lesson, Part, Ticks } from '@barwise/parser'
import { type BarProfile, beatCount, differingBeats, profileOf } from './bar-compare.ts'
import { type Exchange, exchangeShapes, toldAlike } from './exchange-shapes.ts'
import { emptyMemory, fullMemory, type ShapeMemory } from './hand.ts'
import { type BeatSpan, joinBeats } from './join-beats.ts'
import { type Repeated, repeatedBeats } from './repeated-beats.ts'
import { restsByBeat } from './rests-by-beat.ts'

/** How a bar is told by an earlier one: all of `bar`, its shapes exchanged, but the stretch from `untilTicks` to `fromTicks`. */
export interface AsBar {
  readonly bar: number
  /** Shapes played in the place of others; empty when the same are played. */
  readonly exchanges: readonly Exchange[]
  /** Ticks up to which it is as the other bar, and from which it is told; the bar's length when nothing is. */
  readonly untilTicks: Ticks
  /** Ticks from which it is as the other bar again; the bar's length when it is not. */
  readonly fromTicks: Ticks
}

/** A bar that gets a card: the bar itself, the others that are the same, and what of it is shown. */
export interface Card {
  readonly bar: number
  readonly also: readonly number[]
  readonly as: AsBar | null
  /** What is shown, in ticks from the start of the bar: all of it where shapes are exchanged, so that their frets are seen. */
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
}

/** The distinct bars of a part in order (a pickup first), each with those that are the same. Found by comparison, not by how the part was written. */
export function distinctBars(part: Part): readonly Pick<Card, 'bar' | 'also'>[] {
  return part.bars
    .filter((bar) => bar.sameAs === null)
    .map(({ number }) => ({
      bar: number,
      also: part.bars.filter((other) => other.sameAs === number).map((other) => other.number),
    }))
}

/** The bars of a part that are told, in order, and how each is told: by itself or by an earlier one. */
export function findCards(lesson: Pick<Lesson, 'shapes'>, written: Part): readonly Card[] {
  const part = restsByBeat(written)
  const memory = fullMemory(emptyMemory(lesson.shapes))
  const told: Told[] = []
  return distinctBars(part).flatMap(({ bar: number, also }): readonly Card[] => {
    const bar = part.bars.find((one) => one.number === number)
    if (bar === undefined) return []
    const profile = profileOf(part, bar)
    const as = number === 0 ? null : nearestBar(part, profile, told, memory)
    if (number > 0) told.push({ profile, whole: as === null, plain: as === null || isPlain(as) })
    const shown = as === null || showsWholeBar({ as }) ? { untilTicks: 0, fromTicks: bar.length } : as
    return [{ bar: number, also, as, fromTicks: shown.untilTicks, toTicks: shown.fromTicks }]
  })
}

/** Whether a card shows its whole bar: one that is told in full, or one whose shapes are exchanged, so that their frets are seen. */
export function showsWholeBar({ as }: Pick<Card, 'as'>): boolean {
  return as === null || as.exchanges.length > 0
}

/** The stretch of a card that is told, in ticks from the start of its bar; of no length when everything is as in another bar. */
export function toldStretch(card: Card): { readonly fromTicks: Ticks; readonly toTicks: Ticks } {
  return card.as === null ? card : { fromTicks: card.as.untilTicks, toTicks: card.as.fromTicks }
}

/** A bar that has a card, and whether it is told there in full. */
interface Told {
  readonly profile: BarProfile
  readonly whole: boolean
  /** Whether another bar can be told by it: not by one told by exchanged shapes and beats of its own at once. */
  readonly plain: boolean
}

function isPlain({ exchanges, untilTicks, fromTicks }: AsBar): boolean {
  return exchanges.length === 0 || untilTicks === fromTicks
}

/** Exchanges a listener can keep in mind. */
const MOST_EXCHANGES = 3

/** Strokes and silences that a bar told by exchanged shapes and beats of its own must leave untold: fewer are told as quickly. */
const LEAST_SPARED = 4

/** Whether it spares a reader enough to be told by another bar: one thing to keep in mind always does, two only for a lot. */
function spares(bar: Bar, as: AsBar): boolean {
  if (isPlain(as)) return true
  return bar.events.filter(({ at }) => at < as.untilTicks || at >= as.fromTicks).length >= LEAST_SPARED
}

/**
 * The earlier bar by which the least of this one is left to tell, that being half the bar at most; where as much is left, the one
 * with fewer exchanges. Shapes are exchanged only in a bar that is told in full itself.
 */
function nearestBar(part: Part, mine: BarProfile, told: readonly Told[], memory: ShapeMemory): AsBar | null {
  const { bar } = mine
  const half = Math.ceil(beatCount(bar) / 2)
  const left = (as: AsBar): number => Math.ceil((as.fromTicks - as.untilTicks) / bar.beatTicks)
  const cost = (as: AsBar): number => left(as) * (MOST_EXCHANGES + 1) + as.exchanges.length
  let best: AsBar | null = null
  for (const { profile, whole, plain } of told) {
    const found = [plain ? asItIs(mine, profile) : null, whole ? exchanged(mine, profile, memory) : null]
    for (const as of found) {
      if (as === null || left(as) > half || left(as) >= beatCount(bar) || !spares(bar, as)) continue
      if (best !== null && cost(as) >= cost(best)) continue
      if (as.exchanges.length === 0 || followsInWords(part, { bar, other: profile.bar }, as, memory)) best = as
    }
  }
  return best
}

function asItIs(mine: BarProfile, theirs: BarProfile): AsBar | null {
  const differing = differingBeats(mine, theirs)
  const stretch = differing === null ? null : wholeStretch(mine.bar, theirs.bar, differing)
  return stretch === null ? null : { bar: theirs.bar.number, exchanges: [], ...ticksOf(mine.bar, stretch) }
}

function exchanged(mine: BarProfile, theirs: BarProfile, memory: ShapeMemory): AsBar | null {
  const { bar } = mine
  const found = exchangeShapes(mine, theirs, memory)
  if (found === null) return null
  const stretch = wholeStretch(bar, theirs.bar, found.differing)
  const { untilTicks, fromTicks } =
    stretch === null ? { untilTicks: bar.length, fromTicks: bar.length } : ticksOf(bar, stretch)
  const exchanges = found.exchanges.filter(({ inPlaceOf }) =>
    theirs.bar.events.some(
      (event) =>
        event.kind === 'strike' && event.target.shape === inPlaceOf && (event.at < untilTicks || event.at >= fromTicks),
    ),
  )
  if (exchanges.length === 0 || exchanges.length > MOST_EXCHANGES) return null
  return { bar: theirs.bar.number, exchanges, untilTicks, fromTicks }
}

/** Whether what is told of the other bar is true of this one with its names exchanged. */
function followsInWords(
  part: Part,
  bars: { readonly bar: Bar; readonly other: Bar },
  { exchanges, untilTicks, fromTicks }: AsBar,
  memory: ShapeMemory,
): boolean {
  return toldAlike(part, bars, exchanges, { memory, fromTicks: untilTicks, toTicks: fromTicks })
}

interface Stretch {
  readonly from: number
  readonly to: number
}

function ticksOf(bar: Bar, { from, to }: Stretch): Pick<AsBar, 'untilTicks' | 'fromTicks'> {
  return { untilTicks: from * bar.beatTicks, fromTicks: Math.min(to * bar.beatTicks, bar.length) }
}

/**
 * The beats from the first to behind the last that differ, widened so that no cut of either bar is torn, no sound is told apart
 * from the beats that it alone fills, and no beat of the other bar is left that is told there by one that differs.
 */
function wholeStretch(bar: Bar, other: Bar, differing: readonly number[]): Stretch | null {
  const first = differing[0]
  const last = differing.at(-1)
  if (first === undefined || last === undefined) return null
  const beats = ({ fromTicks, toTicks }: BeatSpan | Repeated): Stretch => ({
    from: Math.floor(fromTicks / bar.beatTicks),
    to: Math.ceil(toTicks / bar.beatTicks),
  })
  const whole = [
    ...[...bar.groups, ...other.groups].map(({ at, length }) => beats({ fromTicks: at, toTicks: at + length })),
    ...joinBeats(bar, 0, bar.length).map(beats),
  ]
  const spans = joinBeats(other, 0, other.length)
  const repeats = repeatedBeats(other, spans).flatMap((model, i) => {
    const span = spans[i]
    return model === null || span === undefined ? [] : [{ model: beats(model), again: beats(span) }]
  })
  let stretch: Stretch = { from: first, to: last + 1 }
  for (let torn = true; torn; ) {
    const { from, to } = stretch
    const meets = (one: Stretch): boolean => one.from < to && one.to > from
    const touched = [...whole.filter(meets), ...repeats.filter(({ model }) => meets(model)).map(({ again }) => again)]
    stretch = {
      from: Math.min(from, ...touched.map((one) => one.from)),
      to: Math.max(to, ...touched.map((one) => one.to)),
    }
    torn = stretch.from < from || stretch.to > to
  }
  return stretch
}
