import type { Event, Note } from '../score/event.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Bar, Part } from '../score/part.ts'
import type { Finger, Shape } from '../score/shape.ts'
import type { Fingering } from './grip.ts'
import { gripOf } from './grip.ts'
import { type HandAside, type HandMoment, handMoments } from './hand-moments.ts'
import { COMMON_PACE, type HandPace } from './hand-pace.ts'
import { fingeringPath, type PathOptions } from './hand-path.ts'
import { neckOf } from './neck.ts'
import { type HandOnNeck, rankForHand } from './rank-for-hand.ts'

/** A moment with the fingers that play it, null when no hand can. */
export interface FingeredMoment extends HandMoment {
  readonly fingering: Fingering | null
}

/** Another way to play a stretch of a bar, fingered from where the hand is before it. */
export interface FingeredAside extends HandAside {
  readonly moments: readonly FingeredMoment[]
}

/** The moments of a part with the fingers that play them. */
export interface FingeredPart {
  readonly moments: readonly FingeredMoment[]
  readonly asides: readonly FingeredAside[]
}

/** A lesson with every finger filled in, and what the hand rules judge of each part by its id. */
export interface FingeredLesson {
  readonly lesson: Lesson
  readonly hands: ReadonlyMap<string, FingeredPart>
}

/**
 * Works out the fingers a lesson leaves out: one path through each part; a shape that the writer did not finger gets the
 * fingers it is played with most often, and keeps them everywhere. Fingers the writer gave are never changed.
 */
export function fingerLesson(lesson: Lesson, on: HandOnNeck = handOnNeck(lesson)): FingeredLesson {
  const withShapes = { ...lesson, shapes: fingerShapes(lesson, on) }
  const hands = new Map<string, FingeredPart>()
  const parts = withShapes.parts.map((part) => {
    const fingered = fingerPart(withShapes, part, on)
    hands.set(part.id, fingered)
    return { ...part, bars: fingerBars(part, fingered) }
  })
  const fingered = { ...withShapes, parts }
  return { lesson: fingered, hands }
}

/**
 * The moments of one part with the fingers along its cheapest path. Another way to play a stretch has a path of its own, which
 * starts from the hand as the main line leaves it there.
 */
export function fingerPart(lesson: Lesson, part: Part, on: HandOnNeck = handOnNeck(lesson)): FingeredPart {
  const { moments, asides } = handMoments(lesson, part)
  const main = withPath(moments, on)
  return {
    moments: main,
    asides: asides.map((aside) => ({
      ...aside,
      moments: withPath(aside.moments, {
        ...on,
        from: lastPressed(main, aside.after),
      }),
    })),
  }
}

/** The last of so many moments that presses a string; null when none does. */
function lastPressed(moments: readonly FingeredMoment[], count: number): FingeredMoment | null {
  for (let at = count - 1; at >= 0; at--) {
    const moment = moments[at]
    if (moment !== undefined && moment.grip.presses.length > 0) return moment
  }
  return null
}

function withPath(moments: readonly HandMoment[], options: PathOptions): readonly FingeredMoment[] {
  const path = fingeringPath(moments, options)
  return moments.map((moment, at) => ({ ...moment, fingering: path[at] ?? null }))
}

/** The hand and the neck of a lesson. */
export function handOnNeck(lesson: Lesson, pace: HandPace = COMMON_PACE): HandOnNeck {
  return { neck: neckOf(lesson.instrument), hand: lesson.settings.hand, pace }
}

/** The shapes with fingers, as most moments have them; those worked out here count as given for the path that follows. */
function fingerShapes(lesson: Lesson, on: HandOnNeck): readonly Shape[] {
  const open = new Set(lesson.shapes.filter((shape) => !isFingered(shape)).map((shape) => shape.name))
  if (open.size === 0) return lesson.shapes
  const votes = new Map<string, Map<string, number>>()
  for (const part of lesson.parts) {
    const { moments, asides } = fingerPart(lesson, part, on)
    for (const line of [moments, ...asides.map((aside) => aside.moments)]) {
      for (const [at, moment] of line.entries()) {
        const { shape, plainShape, readied, fingering } = moment
        const own = plainShape || readied.length > 0
        if (shape === null || !own || fingering === null || !open.has(shape.name)) continue
        const tally = votes.get(shape.name) ?? new Map<string, number>()
        const key = JSON.stringify(shapeFingers(shape, stringFingers(moment)))
        tally.set(key, (tally.get(key) ?? 0) + (leavesFinger(moment, line[at + 1]) ? moments.length : 1))
        votes.set(shape.name, tally)
      }
    }
  }
  return lesson.shapes.map((shape) => {
    if (!open.has(shape.name)) return shape
    const tally = [...(votes.get(shape.name) ?? [])].sort((a, b) => b[1] - a[1])
    const voted = tally[0]?.[0]
    const fingers = voted === undefined ? easiest(shape, on) : (JSON.parse(voted) as readonly (Finger | null)[])
    return fingers === null ? shape : { ...shape, fingers }
  })
}

/**
 * Whether the shape of a moment has to leave a finger, wherever else it is played: for a note hammered next while others go on, or for
 * the fret that the next note is pulled off to.
 */
function leavesFinger({ readied }: HandMoment, next: HandMoment | undefined): boolean {
  return readied.length > 0 || (next?.event.technique === 'hammer' && next.holds.length > 0)
}

/** Whether every string that a shape presses has its finger; a writer may give some and leave the others. */
function isFingered(shape: Shape): boolean {
  return shape.frets.every((fret, at) => fret === null || fret === 0 || shape.fingers[at] !== null)
}

function easiest(shape: Shape, on: HandOnNeck): readonly (Finger | null)[] | null {
  const grip = gripOf(shape.frets.map((fret, at) => ({ string: at + 1, fret, finger: shape.fingers[at] ?? null })))
  const best = rankForHand(grip, on)[0]
  if (best === undefined) return null
  return shapeFingers(shape, new Map(grip.presses.map((press, at) => [press.string, best.fingering[at] ?? null])))
}

/** The fingers of a shape by string from 1 upward, null where none presses. */
function shapeFingers(shape: Shape, byString: ReadonlyMap<number, Finger | null>): readonly (Finger | null)[] {
  return shape.frets.map((fret, at) => (fret === null || fret === 0 ? null : (byString.get(at + 1) ?? null)))
}

/** The finger on each string of a moment; where a string is pressed twice, that of the higher fret, which sounds. */
function stringFingers(moment: FingeredMoment): ReadonlyMap<number, Finger> {
  const byString = new Map<number, Finger>()
  moment.grip.presses.forEach((press, at) => {
    const finger = moment.fingering?.[at]
    if (finger !== undefined) byString.set(press.string, finger)
  })
  return byString
}

function fingerBars(part: Part, { moments, asides }: FingeredPart): readonly Bar[] {
  const main = byPlace(moments)
  const others = new Map(asides.map((aside) => [`${aside.bar.number}.${aside.alternative}`, byPlace(aside.moments)]))
  return part.bars.map((bar) => ({
    ...bar,
    events: bar.events.map((event) => fingerEvent(event, main.get(`${bar.number}.${event.at}`))),
    alternatives: bar.alternatives.map((one, alternative) => {
      const placed = others.get(`${bar.number}.${alternative}`)
      return {
        ...one,
        events: one.events.map((event) => fingerEvent(event, placed?.get(`${bar.number}.${event.at}`))),
      }
    }),
  }))
}

function byPlace(moments: readonly FingeredMoment[]): ReadonlyMap<string, FingeredMoment> {
  return new Map(moments.map((moment) => [`${moment.bar.number}.${moment.event.at}`, moment]))
}

function fingerEvent(event: Event, moment: FingeredMoment | undefined): Event {
  if (event.kind !== 'strike' || moment === undefined) return event
  const fingers = stringFingers(moment)
  const finger = (note: Note): Note => {
    if (note.fret === null || note.fret === 0 || note.fingerGiven) return note
    const press = moment.grip.presses.findIndex((p) => p.string === note.string && p.fret === note.fret)
    return { ...note, finger: moment.fingering?.[press] ?? fingers.get(note.string) ?? null }
  }
  return { ...event, notes: event.notes.map(finger) }
}
