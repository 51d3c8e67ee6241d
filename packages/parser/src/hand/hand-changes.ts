import type { Part, Repeat } from '../score/part.ts'
import type { Finger } from '../score/shape.ts'
import type { FingeredMoment } from './finger-part.ts'
import { moveTime } from './move-time.ts'
import { playedStart, seconds } from './played-time.ts'
import type { HandOnNeck } from './rank-for-hand.ts'

/** A change of the fretting hand between two strikes that need it, one played after the other. */
export interface HandChange {
  readonly from: FingeredMoment
  readonly to: FingeredMoment
  readonly neededS: number
  /** Seconds there are at the tempo of the bar it starts in. */
  readonly availableS: number
  /** Fingers that have to move, the index first. */
  readonly fingers: readonly Finger[]
  /** Whether it is made where the part goes back to its repeat's start or on to a later ending. */
  readonly atRepeat: boolean
}

/** The changes of a part in the order they are written, then those at its repeats. */
export function handChanges(
  on: HandOnNeck,
  part: Pick<Part, 'bars' | 'repeats'>,
  moments: readonly FingeredMoment[],
): readonly HandChange[] {
  return [...changesInOrder(on, part.repeats, moments), ...changesAtRepeats(on, part, moments.filter(needsHand))]
}

/**
 * The changes between each strike that presses a string and the next one where a finger has to move, save out of one ending into the
 * next. Strikes on open strings alone need no finger, so the hand may already be on its way.
 */
export function changesInOrder(
  on: HandOnNeck,
  repeats: readonly Repeat[],
  moments: readonly FingeredMoment[],
): readonly HandChange[] {
  const needing = moments.filter(needsHand)
  const parted = new Set(
    repeats.flatMap(({ endings }) => endings.slice(1).map((ending) => `${ending.from - 1}>${ending.from}`)),
  )
  const changes: HandChange[] = []
  for (const [at, to] of needing.entries()) {
    const from = needing[at - 1]
    if (from === undefined || crossesEnding(from.bar.number, to.bar.number, parted)) continue
    const change = changeBetween(on, from, to, playedStart(to) - playedStart(from))
    if (change !== null) changes.push({ ...change, atRepeat: false })
  }
  return changes
}

/** Whether a strike has fingers and presses a string with them. */
export function needsHand({ fingering, event }: FingeredMoment): boolean {
  return fingering !== null && event.notes.some(({ fret }) => fret !== null && fret > 0)
}

/** Whether the way from one bar to a later one leads out of one ending into the next, which nobody plays. */
function crossesEnding(from: number, to: number, parted: ReadonlySet<string>): boolean {
  if (parted.size === 0) return false
  for (let bar = from; bar < to; bar++) if (parted.has(`${bar}>${bar + 1}`)) return true
  return false
}

function changesAtRepeats(
  on: HandOnNeck,
  part: Pick<Part, 'bars' | 'repeats'>,
  needing: readonly FingeredMoment[],
): readonly HandChange[] {
  const barOf = new Map(part.bars.map((bar) => [bar.number, bar]))
  return repeatJoints(part.repeats).flatMap(([last, first]): readonly HandChange[] => {
    const from = needing[firstFrom(last + 1, needing) - 1]
    const to = needing[firstFrom(first, needing)]
    const [left, entered] = [barOf.get(last), barOf.get(first)]
    if (from === undefined || to === undefined || left === undefined || entered === undefined) return []
    const toEnd = left.start + left.length - (from.bar.start + from.playedAt)
    const fromStart = to.bar.start + to.playedAt - entered.start
    const change = changeBetween(on, from, to, toEnd + fromStart)
    return change === null ? [] : [{ ...change, atRepeat: true }]
  })
}

/** The place, among strikes in the order of their bars, of the first that is in a bar or after it. */
function firstFrom(bar: number, strikes: readonly FingeredMoment[]): number {
  let [low, high] = [0, strikes.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((strikes[middle]?.bar.number ?? 0) < bar) low = middle + 1
    else high = middle
  }
  return low
}

/** The bars that follow each other at repeats though they are not written so: the one left, the one entered. */
function repeatJoints(repeats: readonly Repeat[]): readonly (readonly [number, number])[] {
  return repeats.flatMap(({ from, to, endings }) => {
    const first = endings[0]
    if (first === undefined) return [[to, from] as const]
    const last = endings.at(-1)
    const back = endings.flatMap((ending) =>
      ending === last && ending.numbers.length === 1 ? [] : [[ending.to, from] as const],
    )
    const onward = endings.slice(1).map((ending) => [first.from - 1, ending.from] as const)
    return [...back, ...onward.filter(([left]) => left >= from)]
  })
}

function changeBetween(
  on: HandOnNeck,
  from: FingeredMoment,
  to: FingeredMoment,
  ticks: number,
): Omit<HandChange, 'atRepeat'> | null {
  const { neededS, fingers } = moveTime(on, from, to)
  return fingers.length === 0 ? null : { from, to, neededS, availableS: seconds(ticks, from.bar), fingers }
}

/** Hundredths of a second: as exactly as a change is judged and printed. */
export function hundredths(seconds: number): number {
  return Math.round(seconds * 100)
}

/** The fastest tempo, in the bar's own beats a minute, at which a change still fits to the hundredth of a second. */
export function fastestTempo({ from, availableS, neededS }: HandChange): number {
  return Math.floor((from.bar.tempoBpm * availableS * 100) / (hundredths(neededS) - 0.5))
}
