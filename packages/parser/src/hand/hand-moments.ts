import { barStart } from '../score/bar-start.ts'
import type { Event, NoteStart, Strike } from '../score/event.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Bar, Part } from '../score/part.ts'
import type { Shape } from '../score/shape.ts'
import { swungAt } from '../score/swing.ts'
import type { Ticks } from '../score/time.ts'
import { type Grip, gripOf } from './grip.ts'
import { gripOfNotes, gripOfShape } from './grip-of-strike.ts'

/** One strike as the fretting hand meets it: when, and what has to be held. */
export interface HandMoment {
  readonly bar: Bar
  readonly event: Strike
  /** Ticks from the start of bar 1; a pickup lies before 0. */
  readonly start: Ticks
  readonly end: Ticks
  /** Where the feel of its bar plays it, in ticks from the start of the bar; `start` is where it is written. */
  readonly playedAt: Ticks
  readonly grip: Grip
  /** The shape the writer named, null for a notes target. */
  readonly shape: Shape | null
  /** Whether the grip is that shape as it stands, moved or not, with nothing added nor held ready beside it. */
  readonly plainShape: boolean
  /** Whether its fingers are those of a shape that single notes lie in: usual, but not asked for. */
  readonly borrowed: boolean
  /** Strings whose notes slide in from where they were. */
  readonly slides: readonly number[]
  /** Strings on which another finger already holds the fret that the next note is pulled off to. */
  readonly readied: readonly number[]
  /** Strings whose notes are hammered on. */
  readonly hammers: readonly number[]
  /** Strings whose notes go on from before while others are hammered or pulled. */
  readonly holds: readonly number[]
}

/** Another way to play a stretch of a bar, as the fretting hand meets it. */
export interface HandAside {
  readonly bar: Bar
  /** Which of the bar's alternatives it is, from 0. */
  readonly alternative: number
  /** How many moments of the main line come before it. */
  readonly after: number
  /** Where the main line goes on, in ticks from the start of bar 1. */
  readonly end: Ticks
  readonly moments: readonly HandMoment[]
}

/** A part as the fretting hand meets it: its main line, and what may be played instead. */
export interface PartMoments {
  readonly moments: readonly HandMoment[]
  readonly asides: readonly HandAside[]
}

/** The moments of a part in order. Shapes are taken whole, also where only some of their strings are struck. */
export function handMoments(lesson: Lesson, part: Part): PartMoments {
  const shapes = new Map(lesson.shapes.map((shape) => [shape.name, shape]))
  const moments: HandMoment[] = []
  const asides: HandAside[] = []
  let state: Sounding = { ringing: [], symbol: null }
  for (const bar of part.bars) {
    const place = { bar, swung: swungAt(bar), shapes, all: lesson.shapes }
    const taken = new Set<number>()
    const takeAsides = (until: Ticks): void => {
      bar.alternatives.forEach(({ at, length, events }, alternative) => {
        if (at > until || taken.has(alternative)) return
        taken.add(alternative)
        asides.push({
          bar,
          alternative,
          after: moments.length,
          end: barStart(bar) + at + length,
          moments: momentsAside(events, state, place),
        })
      })
    }
    for (const event of bar.events) {
      takeAsides(event.at)
      const met = meet(event, state, place)
      if (met.moment !== null) moments.push(met.moment)
      state = met.state
    }
    takeAsides(bar.length)
  }
  return { moments: withPullTargets(moments), asides }
}

/** What sounds on without being struck again, and the chord symbol in force. */
interface Sounding {
  readonly ringing: readonly { readonly string: number; readonly fret: number; readonly until: Ticks }[]
  readonly symbol: string | null
}

interface PlaceInPart {
  readonly bar: Bar
  readonly swung: (at: Ticks) => Ticks
  readonly shapes: ReadonlyMap<string, Shape>
  readonly all: readonly Shape[]
}

function momentsAside(events: readonly Event[], from: Sounding, place: PlaceInPart): readonly HandMoment[] {
  let state = from
  const moments = events.flatMap((event) => {
    const met = meet(event, state, place)
    state = met.state
    return met.moment ?? []
  })
  return withPullTargets(moments)
}

/** One event as the hand meets it (null when it asks nothing of the hand), and what sounds after it. */
function meet(
  event: Event,
  before: Sounding,
  { bar, swung, shapes, all }: PlaceInPart,
): { readonly moment: HandMoment | null; readonly state: Sounding } {
  const from = barStart(bar)
  const start = from + event.at
  const ringing = before.ringing.filter((note) => note.until > start)
  if (event.kind !== 'strike') return { moment: null, state: { ...before, ringing } }
  const symbol = bar.chords.findLast((chord) => chord.at <= event.at)?.symbol ?? before.symbol
  const shape = event.target.shape === null ? null : (shapes.get(event.target.shape) ?? null)
  const grip = shape === null ? gripOfNotes(event, { ringing, symbol, shapes: all }) : gripOfShape(event, shape)
  const asked = shape !== null || event.notes.some((note) => note.fingerGiven)
  const moment = {
    bar,
    event,
    start,
    end: start + event.duration,
    playedAt: swung(event.at),
    grip,
    shape,
    plainShape: shape !== null && event.target.added.length === 0,
    borrowed: !asked && grip.presses.some((press) => press.finger !== null),
    slides: stringsOf(event, 'slid'),
    readied: [],
    hammers: stringsOf(event, 'hammered'),
    holds: stringsOf(event, 'held'),
  }
  const struck = new Set(event.notes.map((note) => note.string))
  const rings = event.notes.flatMap((note) =>
    note.ringsTo !== null && note.fret !== null && note.fret > 0
      ? [{ string: note.string, fret: note.fret, until: from + note.ringsTo }]
      : [],
  )
  // What the hand let go for this grip does not come back.
  const kept = ringing.filter(
    ({ string, fret }) =>
      !struck.has(string) && grip.presses.some((press) => press.string === string && press.fret === fret),
  )
  return { moment, state: { symbol, ringing: [...kept, ...rings] } }
}

function stringsOf(event: Strike, from: NoteStart): readonly number[] {
  return event.notes.filter((note) => note.from === from).map((note) => note.string)
}

/** A finger pulls off to a fret that another already holds: the moment before has to hold it too. */
function withPullTargets(moments: readonly HandMoment[]): readonly HandMoment[] {
  return moments.map((moment, at) => {
    const next = moments[at + 1]
    if (next === undefined || next.event.technique !== 'pull' || next.start !== moment.end) return moment
    const targets = next.event.notes.filter((note) => note.from === 'pulled' && note.fret !== null && note.fret > 0)
    const missing = targets.filter(
      (note) => !moment.grip.presses.some((p) => p.string === note.string && p.fret === note.fret),
    )
    if (missing.length === 0) return moment
    const presses = [
      ...moment.grip.presses,
      ...missing.map((note) => ({ string: note.string, fret: note.fret ?? 0, finger: null })),
    ]
    const open = moment.grip.open.map((string) => ({ string, fret: 0, finger: null }))
    const readied = missing.map((note) => note.string)
    return { ...moment, grip: gripOf([...presses, ...open]), plainShape: false, readied }
  })
}
