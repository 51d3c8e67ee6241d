import type { Bar, Event, Note, Part, Ticks } from '@barwise/parser'

/** What sounds into a bar by a hold: notes by string and fret, or a muted stroke; null when nothing does. */
export interface HeldIn {
  readonly event: Event
  /** Ticks from this bar's start to its end. */
  readonly until: Ticks
}

/** The bars played before a bar, the nearest first: before an ending after the first stands the bar before the first ending. */
export function barsBefore(part: Part, bar: Bar): readonly Bar[] {
  let end = part.bars.findIndex((one) => one.number === bar.number)
  for (const { endings } of part.repeats) {
    const later = endings.slice(1).some((ending) => ending.from === bar.number)
    const first = part.bars.findIndex((one) => one.number === endings[0]?.from)
    if (later && first >= 0) end = first
  }
  return part.bars.slice(0, end).reverse()
}

/** The event that goes on over the start of a bar of a part, or null. A silence never does: each bar tells its own. */
export function heldInto(part: Part, bar: Bar): HeldIn | null {
  let back = 0
  for (const before of barsBefore(part, bar)) {
    back += before.length
    const last = before.events.at(-1)
    if (last === undefined) continue
    const until = last.at + last.duration - back
    return until > 0 && last.kind !== 'rest' ? { event: last, until } : null
  }
  return null
}

/** A bar's number of beats, a beginning one counted whole. */
export function beatCount(bar: Pick<Bar, 'length' | 'beatTicks'>): number {
  return Math.ceil(bar.length / bar.beatTicks)
}

/**
 * The beats of `bar` (0-based, in order) that are not as in `other`, or null when the two are not comparable
 * (other metre, grid, count or way of striking). Compared are events, cuts and what is held in.
 */
export function differingBeats(part: Part, bar: Bar, other: Bar): readonly number[] | null {
  if (!sameFrame(bar, other)) return null
  const mine = heldInto(part, bar)
  const theirs = heldInto(part, other)
  const sameIn = mine === null ? theirs === null : theirs !== null && sameHeld(mine, theirs)
  const differing: number[] = []
  for (let beat = 0; beat < beatCount(bar); beat++) {
    if ((beat === 0 && !sameIn) || beatKey(bar, beat) !== beatKey(other, beat)) differing.push(beat)
  }
  return differing
}

/** Whether two bars can be compared beat by beat: the same length, beats, grid and way of striking. */
export function sameFrame(bar: Bar, other: Bar): boolean {
  return (
    bar.length === other.length &&
    bar.beatTicks === other.beatTicks &&
    bar.firstBeat === other.firstBeat &&
    bar.grid === other.grid &&
    bar.stroke === other.stroke
  )
}

function sameHeld(a: HeldIn, b: HeldIn): boolean {
  return a.until === b.until && soundKey(a.event) === soundKey(b.event)
}

/**
 * A beat as text to compare: what goes on over its start, what starts in it, its cuts. Times count from the beat's start and end with
 * it: how far a sound goes on past the beat is told by the beats behind it.
 */
export function beatKey(bar: Bar, beat: number): string {
  const from = beat * bar.beatTicks
  const to = from + bar.beatTicks
  const within = (at: Ticks): boolean => at >= from && at < to
  const before = bar.events.findLast((event) => event.at < from)
  const over = before !== undefined && before.at + before.duration > from ? `${before.kind}>` : ''
  const events = bar.events
    .filter((event) => within(event.at))
    .map((event) => eventKey({ ...event, duration: Math.min(event.duration, to - event.at) }, from))
  const groups = bar.groups
    .filter((group) => within(group.at))
    .map((group) => `${group.at - from}:${group.length}/${group.parts}`)
  return `${over}${events.join(' ')}|${groups.join(' ')}`
}

/** An event as text to compare: when, how long, and what it plays. */
export function eventKey(event: Event, from: Ticks = 0): string {
  return `${event.at - from}+${event.duration}=${soundKey(event)}`
}

/** What an event plays, as text to compare, without its time. */
export function soundKey(event: Event): string {
  if (event.kind === 'rest') return 'rest'
  const marks = `${event.stroke}${event.marks.join('')}${event.palmMuted ? 'm' : ''}`
  if (event.kind === 'scratch') return `x${event.strings?.join(',') ?? ''}/${marks}`
  return `${event.notes.map(noteKey).join(',')}/${marks}${event.rolled ? 'r' : ''}`
}

function noteKey(note: Note): string {
  return `${note.string}:${note.fret ?? 'x'}:${note.from}:${note.fromFret ?? ''}`
}
