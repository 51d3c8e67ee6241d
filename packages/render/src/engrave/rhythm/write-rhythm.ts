import { type Bar, type Event, type MetreShape, metreShape, type Repeat, type Ticks } from '@barwise/parser'
import { longestValueWithin, type NoteValue, singleValue, valueTicks } from './note-value.ts'
import { splitSpan, syncopatedPair, type TimeSpan } from './split-span.ts'
import { cutAtTuplets, lastingIn, nominalIn, type WrittenTuplet } from './written-tuplet.ts'

/** One written note, chord or rest: a whole event, or a piece of one tied to the next. Ticks from the start of its bar. */
export interface WrittenNote {
  readonly at: Ticks
  readonly ticks: Ticks
  readonly value: NoteValue
  readonly event: Event
  /** Where the event begins, from the start of this bar: negative when it was begun in an earlier one. */
  readonly eventAt: Ticks
  /** Goes on from the piece before, or into the next; rests never do. */
  readonly tiedIn: boolean
  readonly tiedOut: boolean
  /** The innermost tuplet it stands in. */
  readonly tuplet: WrittenTuplet | null
  /** A rest that fills its bar, set in the middle. */
  readonly wholeBar: boolean
}

/** What sounds in a bar: those of its own events, and before them the one that is held in. */
export interface BarContent {
  readonly bar: Bar
  readonly heldIn: { readonly event: Event; readonly at: Ticks } | null
}

/**
 * What each bar holds, held notes included, in the order of the bars. A later ending does not go on from the bar printed before it: what it holds
 * from before the first ending is an event of its own, of held notes.
 */
export function barContents(bars: readonly Bar[], repeats: readonly Repeat[] = []): readonly BarContent[] {
  // Every system and every card of a part asks; what is asked for is data that never changes.
  const known = contentsOfBars.get(bars)?.get(repeats)
  if (known !== undefined) return known
  const contents = findContents(bars, repeats)
  const ofBars = contentsOfBars.get(bars) ?? new WeakMap<readonly Repeat[], readonly BarContent[]>()
  contentsOfBars.set(bars, ofBars.set(repeats, contents))
  return contents
}

const contentsOfBars = new WeakMap<readonly Bar[], WeakMap<readonly Repeat[], readonly BarContent[]>>()

function findContents(bars: readonly Bar[], repeats: readonly Repeat[]): readonly BarContent[] {
  const later = new Set(repeats.flatMap(({ endings }) => endings.slice(1).map(({ from }) => from)))
  let held: BarContent['heldIn'] = null
  return bars.map((bar) => {
    const heldIn: BarContent['heldIn'] = later.has(bar.number) ? null : held
    const last: Event | undefined = bar.events.at(-1)
    const open: BarContent['heldIn'] = last === undefined ? heldIn : { event: last, at: last.at }
    held =
      open !== null && open.at + open.event.duration > bar.length
        ? { event: open.event, at: open.at - bar.length }
        : null
    return { bar, heldIn }
  })
}

/** Whether an event only holds what sounds already: nothing of it is struck or moved. */
export function isHeldOver(event: Event): boolean {
  return event.kind === 'strike' && event.stroke === null && event.notes.every(({ from }) => from === 'held')
}

/** The rhythm of a bar in written values, in order, without gaps: their ticks add up to the bar's length. */
export function writeRhythm(content: BarContent): readonly WrittenNote[] {
  const known = rhythmOfContent.get(content)
  if (known !== undefined) return known
  const rhythm = findRhythm(content)
  rhythmOfContent.set(content, rhythm)
  return rhythm
}

const rhythmOfContent = new WeakMap<BarContent, readonly WrittenNote[]>()

function findRhythm({ bar, heldIn }: BarContent): readonly WrittenNote[] {
  const shape = metreShape(bar.metre)
  const offset = Math.max(0, shape.length - bar.length) * (bar.number === 0 ? 1 : 0)
  const sounding = [...(heldIn === null ? [] : [heldIn]), ...bar.events.map((event) => ({ event, at: event.at }))]
  return sounding.flatMap(({ event, at }) => writeEvent({ event, at, bar, shape, offset }))
}

interface EventInBar {
  readonly event: Event
  readonly at: Ticks
  readonly bar: Bar
  readonly shape: MetreShape
  /** Ticks of a full bar that are missing before a pickup. */
  readonly offset: Ticks
}

function writeEvent({ event, at, bar, shape, offset }: EventInBar): readonly WrittenNote[] {
  const from = Math.max(0, at)
  const to = Math.min(bar.length, at + event.duration)
  const rest = event.kind === 'rest'
  const pieces: { at: Ticks; ticks: Ticks; value: NoteValue; tuplet: WrittenTuplet | null }[] = []
  for (const stretch of cutAtTuplets(from, to, bar.groups)) {
    if (stretch.tuplet !== null) pieces.push(...writeInTuplet(stretch.from, stretch.to, stretch.tuplet))
    else {
      const whole = { from: stretch.from + offset, to: stretch.to + offset }
      const syncope = standsAlone(whole, shape, offset, bar)
      for (const span of splitSpan(whole, shape, { rest, syncope })) {
        const ticks = span.to - span.from
        const value =
          singleValue(ticks) ?? (rest && ticks === bar.length ? { base: 1 as const, dots: 0 as const } : nearest(ticks))
        pieces.push({ at: span.from - offset, ticks, value, tuplet: null })
      }
    }
  }
  const wholeBar = rest && from === 0 && to === bar.length
  if (wholeBar && bar.groups.length === 0)
    pieces.splice(0, pieces.length, { at: 0, ticks: to, value: { base: 1, dots: 0 }, tuplet: null })
  return pieces.map((piece) => ({
    ...piece,
    event,
    eventAt: at,
    tiedIn: !rest && (piece.at > at || isHeldOver(event)),
    tiedOut: !rest && piece.at + piece.ticks < at + event.duration,
    wholeBar: wholeBar && pieces.length === 1,
  }))
}

/** Whether nothing else begins inside the two beats a syncope stands in, so that it reads as eighth-quarter-eighth. */
function standsAlone(span: TimeSpan, shape: MetreShape, offset: Ticks, bar: Bar): boolean {
  const pair = syncopatedPair(span, shape)
  if (pair === null) return false
  return bar.events.every(({ at }) => {
    const start = at + offset
    return start <= pair.from || start >= pair.to || start === span.from || start === span.to
  })
}

function nearest(ticks: Ticks): NoteValue {
  return longestValueWithin(ticks) ?? { base: 128, dots: 0 }
}

/** Inside a tuplet the written values count: whole parts, joined to the longest plain value that starts where it may. */
function writeInTuplet(
  from: Ticks,
  to: Ticks,
  tuplet: WrittenTuplet,
): { at: Ticks; ticks: Ticks; value: NoteValue; tuplet: WrittenTuplet }[] {
  const pieces: { at: Ticks; ticks: Ticks; value: NoteValue; tuplet: WrittenTuplet }[] = []
  let at = from
  while (at < to) {
    const value = nearest(nominalIn(tuplet, to - at))
    const ticks = lastingIn(tuplet, valueTicks(value))
    pieces.push({ at, ticks, value, tuplet })
    at += ticks
  }
  return pieces
}
