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

/** What of a bar is compared with other bars, worked out once. */
export interface BarProfile {
  readonly bar: Bar
  /** Length, beats, grid and way of striking: bars in which these differ are not compared. */
  readonly frame: string
  readonly heldIn: HeldIn | null
  /** Each beat as text to compare: all that is played, and that without the notes of shapes. */
  readonly beats: readonly string[]
  readonly manners: readonly string[]
}

/** The profile of a bar of a part. */
export function profileOf(part: Part, bar: Bar): BarProfile {
  const beats = Array.from({ length: beatCount(bar) }, (_, beat) => beat)
  return {
    bar,
    frame: [bar.length, bar.beatTicks, bar.firstBeat, bar.grid, bar.stroke].join(),
    heldIn: heldInto(part, bar),
    beats: beats.map((beat) => beatKey(bar, beat, soundKey)),
    manners: beats.map((beat) => beatKey(bar, beat, mannerKey)),
  }
}

/**
 * The beats of a bar (0-based, in order) that are not as in another, or null when the two are not comparable (other metre, grid,
 * count or way of striking). Compared are events, cuts and what is held in.
 */
export function differingBeats(mine: BarProfile, theirs: BarProfile): readonly number[] | null {
  if (mine.frame !== theirs.frame) return null
  const sameIn = heldKey(mine.heldIn) === heldKey(theirs.heldIn)
  return mine.beats.flatMap((key, beat) => ((beat > 0 || sameIn) && key === theirs.beats[beat] ? [] : [beat]))
}

function heldKey(held: HeldIn | null): string {
  return held === null ? '' : `${held.until} ${soundKey(held.event)}`
}

/**
 * A beat as text to compare: what goes on over its start, what starts in it, its cuts. Times count from the beat's start and end with
 * it: how far a sound goes on past the beat is told by the beats behind it, save that it goes on over the bar line.
 */
export function beatKey(bar: Bar, beat: number, keyOf: (event: Event) => string = soundKey): string {
  const from = beat * bar.beatTicks
  const to = from + bar.beatTicks
  const within = (at: Ticks): boolean => at >= from && at < to
  const before = bar.events.findLast((event) => event.at < from)
  const over = before !== undefined && before.at + before.duration > from ? `${before.kind}>` : ''
  const events = bar.events
    .filter((event) => within(event.at))
    .map((event) => `${event.at - from}+${Math.min(event.duration, to - event.at)}=${keyOf(event)}`)
  const groups = bar.groups
    .filter((group) => within(group.at))
    .map((group) => `${group.at - from}:${group.length}/${group.parts}`)
  const last = to < bar.length ? undefined : bar.events.at(-1)
  const on = last !== undefined && last.at + last.duration > bar.length ? '>' : ''
  return `${over}${events.join(' ')}${on}|${groups.join(' ')}`
}

/** What an event plays, as text to compare, without its time. */
export function soundKey(event: Event): string {
  if (event.kind === 'rest') return 'rest'
  const marks = `${event.stroke}${event.marks.join('')}${event.palmMuted ? 'm' : ''}`
  if (event.kind === 'scratch') return `x${event.strings?.join(',') ?? ''}/${marks}`
  return `${event.notes.map(noteKey).join(',')}/${marks}${event.rolled ? 'r' : ''}`
}

/** How an event is played, as text to compare: that of a shape without its notes, save which strings are chosen. */
export function mannerKey(event: Event): string {
  if (event.kind !== 'strike' || event.target.shape === null) return soundKey(event)
  const { only, shift, added } = event.target
  const strings = only === null ? 'all' : event.notes.map((note) => note.string).join()
  return `${strings}^${shift}+${added.length}/${event.technique}${soundKey({ ...event, notes: [] })}`
}

function noteKey(note: Note): string {
  return `${note.string}:${note.fret ?? 'x'}:${note.from}:${note.fromFret ?? ''}`
}
