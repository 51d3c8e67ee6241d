import type { Event, Note } from '../score/event.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Bar, Part } from '../score/part.ts'
import type { Finger, Shape } from '../score/shape.ts'
import type { Fingering } from './grip.ts'
import { gripOf } from './grip.ts'
import { type HandMoment, handMoments } from './hand-moments.ts'
import { fingeringPath } from './hand-path.ts'
import { neckOf } from './neck.ts'
import { rankFingerings } from './rank-fingerings.ts'

/** A moment with the fingers that play it, null when no hand can. */
export interface FingeredMoment extends HandMoment {
  readonly fingering: Fingering | null
}

/** A lesson with every finger filled in, and the moments of each part the hand rules judge. */
export interface FingeredLesson {
  readonly lesson: Lesson
  readonly moments: ReadonlyMap<string, readonly FingeredMoment[]>
}

/**
 * Works out the fingers a lesson leaves out: one path through each part; a shape that the writer did not finger gets the
 * fingers it is played with most often, and keeps them everywhere. Fingers the writer gave are never changed.
 */
export function fingerLesson(lesson: Lesson): FingeredLesson {
  const withShapes = { ...lesson, shapes: fingerShapes(lesson) }
  const moments = new Map<string, readonly FingeredMoment[]>()
  const parts = withShapes.parts.map((part) => {
    const fingered = fingerMoments(withShapes, part)
    moments.set(part.id, fingered)
    return { ...part, bars: fingerBars(part, fingered) }
  })
  const fingered = {
    ...withShapes,
    parts,
    shapes: withShapes.shapes.map((shape, at) => ({
      ...shape,
      fingersGiven: lesson.shapes[at]?.fingersGiven ?? false,
    })),
  }
  return { lesson: fingered, moments }
}

/** The moments of one part with the fingers along its cheapest path. */
export function fingerMoments(lesson: Lesson, part: Part): readonly FingeredMoment[] {
  const moments = handMoments(lesson, part)
  const path = fingeringPath(neckOf(lesson.instrument), moments)
  return moments.map((moment, at) => ({ ...moment, fingering: path[at] ?? null }))
}

/** The shapes with fingers; shapes worked out here count as given for the path that follows. */
function fingerShapes(lesson: Lesson): readonly Shape[] {
  if (lesson.shapes.every((shape) => shape.fingersGiven)) return lesson.shapes
  const votes = new Map<string, Map<string, number>>()
  for (const part of lesson.parts) {
    for (const moment of fingerMoments(lesson, part)) {
      if (moment.shape === null || !moment.plainShape || moment.fingering === null || moment.shape.fingersGiven)
        continue
      const byString = stringFingers(moment)
      const own = moment.shape.frets.map((fret, at) =>
        fret === null || fret === 0 ? null : (byString.get(at + 1) ?? null),
      )
      const tally = votes.get(moment.shape.name) ?? new Map<string, number>()
      const key = JSON.stringify(own)
      tally.set(key, (tally.get(key) ?? 0) + 1)
      votes.set(moment.shape.name, tally)
    }
  }
  return lesson.shapes.map((shape) => {
    if (shape.fingersGiven) return shape
    const tally = [...(votes.get(shape.name) ?? [])].sort((a, b) => b[1] - a[1])
    const voted = tally[0]?.[0]
    const fingers = voted === undefined ? easiest(shape) : (JSON.parse(voted) as readonly (Finger | null)[])
    return fingers === null ? shape : { ...shape, fingers, fingersGiven: true }
  })
}

function easiest(shape: Shape): readonly (Finger | null)[] | null {
  const grip = gripOf(shape.frets.map((fret, at) => ({ string: at + 1, fret, finger: null })))
  const best = rankFingerings(grip)[0]
  if (best === undefined) return null
  const byString = new Map(grip.presses.map((press, at) => [press.string, best.fingering[at] ?? null]))
  return shape.frets.map((_, at) => byString.get(at + 1) ?? null)
}

/** The finger on each string of a moment; where a string is pressed twice, that of the higher fret, which sounds. */
export function stringFingers(moment: FingeredMoment): ReadonlyMap<number, Finger> {
  const byString = new Map<number, Finger>()
  moment.grip.presses.forEach((press, at) => {
    const finger = moment.fingering?.[at]
    if (finger !== undefined) byString.set(press.string, finger)
  })
  return byString
}

function fingerBars(part: Part, moments: readonly FingeredMoment[]): readonly Bar[] {
  const placed = new Map(moments.map((moment) => [`${moment.bar.number}.${moment.event.at}`, moment]))
  return part.bars.map((bar) => ({
    ...bar,
    events: bar.events.map((event) => fingerEvent(event, placed.get(`${bar.number}.${event.at}`))),
  }))
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
