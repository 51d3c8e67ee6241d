import type { Note, Rest, Scratch, Strike } from '../score/event.ts'
import type { Shape } from '../score/shape.ts'
import type { Ticks } from '../score/time.ts'

/** Data while they are being made. */
export type Making<Data> = { -readonly [Key in keyof Data]: Data[Key] }

/** A note of which the end of its ringing and its spelling are still to come. */
export type NoteMaking = Making<Note>
/** An event whose duration may still grow. */
export type StrikeMaking = Making<Omit<Strike, 'notes'>> & { notes: NoteMaking[] }
export type EventMaking = StrikeMaking | Making<Scratch> | Making<Rest>

/** A note that waits for the end of its ringing; `barStart` in ticks from the start of bar 1, below 0 in a pickup. */
interface Ringing {
  readonly note: NoteMaking
  readonly event: StrikeMaking
  readonly barStart: Ticks
}

/** What happened last. Nothing is concluded from a `lost` sign. A `fixed` event belongs to another line and cannot grow. */
export interface LastEvent {
  readonly event: EventMaking | null
  readonly lost: boolean
  readonly fixed: boolean
}

/** Everything that sounds at a moment, and the shape the hand was on last. */
export interface Sounding {
  last: LastEvent | null
  /** Ringing notes by string. */
  readonly rings: Map<number, { readonly fret: number; readonly waiting: readonly Ringing[] }>
  /** Notes of other ways to play that ring on into the main line; nothing there builds on them. */
  echoes: readonly Ringing[]
  shape: Shape | null
}

/** Silence before the first sign. */
export function silence(): Sounding {
  return { last: null, rings: new Map(), echoes: [], shape: null }
}

/** The same sounds, for a line that cannot change what has been written: its events cannot grow, nor can the rings be ended. */
export function asHeardFrom(state: Sounding): Sounding {
  return {
    last: state.last === null ? null : { ...state.last, fixed: true },
    rings: new Map([...state.rings].map(([string, ring]) => [string, { fret: ring.fret, waiting: [] }])),
    echoes: [],
    shape: state.shape,
  }
}

/** The strike that lasts up to this moment, null when none does (a short one has ended). */
export function lastingStrike(state: Sounding): StrikeMaking | null {
  const event = state.last?.event ?? null
  return event?.kind === 'strike' && !event.marks.includes('short') ? event : null
}

/** What sounds on a string: a note of the event just before, or a ringing one. */
export function soundOn(
  string: number,
  state: Sounding,
): { readonly fret: number; readonly before: NoteMaking | null } | null {
  const before = lastingStrike(state)?.notes.find((note) => note.string === string && note.fret !== null)
  if (before !== undefined && before.fret !== null) return { fret: before.fret, before }
  const ring = state.rings.get(string)
  return ring === undefined ? null : { fret: ring.fret, before: null }
}

/** Lets the notes of an event ring on, each beside what may ring on its string already. */
export function letRing(event: StrikeMaking, barStart: Ticks, state: Sounding): void {
  for (const note of event.notes) {
    if (note.fret === null) continue
    const waiting = state.rings.get(note.string)?.waiting ?? []
    state.rings.set(note.string, { fret: note.fret, waiting: [...waiting, { note, event, barStart }] })
  }
}

/** Ends what rings on a string at `now`, in ticks from the start of bar 1. */
export function endRing(string: number, now: Ticks, state: Sounding): void {
  const ring = state.rings.get(string)
  for (const waiting of ring?.waiting ?? []) finish(waiting, now)
  state.rings.delete(string)
  if (state.echoes.length === 0) return
  for (const echo of state.echoes) if (echo.note.string === string) finish(echo, now)
  state.echoes = state.echoes.filter((echo) => echo.note.string !== string)
}

/** Ends all ringing. */
export function endAllRings(now: Ticks, state: Sounding): void {
  for (const string of [...state.rings.keys()]) endRing(string, now, state)
  for (const echo of state.echoes) finish(echo, now)
  state.echoes = []
}

/** The notes of a finished line that still ring. */
export function stillRinging(state: Sounding): Sounding['echoes'] {
  return [...[...state.rings.values()].flatMap((ring) => ring.waiting), ...state.echoes]
}

function finish({ note, event, barStart }: Ringing, now: Ticks): void {
  if (now > barStart + event.at + event.duration) note.ringsTo = now - barStart
}
