import type { Counted, Frame } from './counts.ts'
import type { Count, Decoded, DecodedBar, Frets, Target } from './decoded.ts'

/** Where the reading of a part stands. */
export interface Reading extends Counted {
  readonly text: string
  readonly shapes: Map<string, Frets>
  readonly bars: Map<number, DecodedBar>
  /** Bars that were said to be others again. */
  readonly same: Map<number, number>
  head: Count

  // The card.
  count: Count
  everyRing: boolean
  firstBeat: number
  cuts: Frame[]
  bar: DecodedBar
  /** The shape that the sentences before described. */
  describing: string | null
  /** Whether an alternative is being read. */
  aside: boolean

  // The item.
  item: { from: number; to: number }
  into: Decoded[]
  /** The next slot, null where a place has to be said. */
  cursor: number | null
  cut: Frame | null
  justCut: boolean
  itemStarted: boolean

  // The fretting hand.
  lastShape: string
  shift: number
  /** The shape in hand, all its strings. */
  hand: Frets | null
  /** What was told to be held, to be struck next. */
  pending: Target
  /** Whether it was told just now, so that more can be added. */
  holding: boolean
}

/** The reading of a part before its first word. */
export function openReading(text: string): Reading {
  const count: Count = { beats: 4, slots: 4, beatTicks: 3360, style: 'alternate' }
  return {
    text,
    shapes: new Map(),
    bars: new Map(),
    same: new Map(),
    head: count,
    count,
    everyRing: false,
    firstBeat: 0,
    cuts: [],
    bar: { number: -1, length: 0, count, events: [], alternatives: [] },
    describing: null,
    aside: false,
    item: { from: 1, to: 1 },
    into: [],
    cursor: null,
    cut: null,
    justCut: false,
    itemStarted: false,
    lastShape: '',
    shift: 0,
    hand: null,
    pending: { frets: new Map(), grip: null },
    holding: false,
  }
}

/** Numbers of the bars played before the one being read, the nearest first: before a later ending stands the bar before the first. */
export function barsBefore({ text, bar }: Reading): number[] {
  const endings = [...text.matchAll(/Endings? ([^:]+): bars? (\d+)/g)].map((match) => ({
    first: /^1\b/.test(match[1]!),
    from: Number(match[2]),
  }))
  const index = endings.findIndex(({ first, from }) => !first && from === bar.number)
  const start = index < 0 ? bar.number : endings.slice(0, index).findLast(({ first }) => first)!.from
  return Array.from({ length: start }, (_, i) => start - 1 - i)
}

/** The events of a bar that was read, or that is another again. */
export function eventsOf(reading: Reading, number: number): readonly Decoded[] {
  return reading.bars.get(reading.same.get(number) ?? number)?.events ?? []
}
