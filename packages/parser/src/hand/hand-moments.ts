import type { Strike } from '../score/event.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Bar, Part } from '../score/part.ts'
import type { Finger, Shape } from '../score/shape.ts'
import type { Ticks } from '../score/time.ts'
import { feasibleFingerings } from './feasible-fingerings.ts'
import { type Grip, gripOf } from './grip.ts'

/** One strike as the fretting hand meets it: when, and what has to be held. */
export interface HandMoment {
  readonly bar: Bar
  readonly event: Strike
  /** Ticks from the start of the part's first written bar. */
  readonly start: Ticks
  readonly end: Ticks
  readonly grip: Grip
  /** The shape the writer named, null for a notes target. */
  readonly shape: Shape | null
  /** Whether the grip is that shape as it stands, moved or not, with nothing added. */
  readonly plainShape: boolean
  /** Strings whose notes slide in from where they were. */
  readonly slides: readonly number[]
}

interface Pressed {
  readonly string: number
  readonly fret: number | null
  readonly finger: Finger | null
}

/** The moments of a part in order. Shapes are taken whole, also where only some of their strings are struck. */
export function handMoments(lesson: Lesson, part: Part): readonly HandMoment[] {
  const shapes = new Map(lesson.shapes.map((shape) => [shape.name, shape]))
  const moments: HandMoment[] = []
  let ringing: readonly { readonly string: number; readonly fret: number; readonly until: Ticks }[] = []
  let symbol: string | null = null
  for (const { bar, barStart } of placedBars(part)) {
    for (const event of bar.events) {
      const start = barStart + event.at
      ringing = ringing.filter((note) => note.until > start)
      if (event.kind !== 'strike') continue
      const shape = event.target.shape === null ? null : (shapes.get(event.target.shape) ?? null)
      symbol = bar.chords.findLast((chord) => chord.at <= event.at)?.symbol ?? symbol
      const own = shape === null ? insideShape(ownPresses(event), symbol, lesson.shapes) : shapePresses(event, shape)
      const sounding = new Set(own.map((press) => press.string))
      const still = ringing.filter((note) => !sounding.has(note.string)).map((note) => ({ ...note, finger: null }))
      moments.push({
        bar,
        event,
        start,
        end: start + event.duration,
        grip: shape === null ? withRinging(own, still) : gripOf(own),
        shape,
        plainShape: shape !== null && event.target.added.length === 0,
        slides: event.notes.filter((note) => note.from === 'slid').map((note) => note.string),
      })
      const struck = new Set(event.notes.map((note) => note.string))
      const rings = event.notes.flatMap((note) =>
        note.ringsTo !== null && note.fret !== null && note.fret > 0
          ? [{ string: note.string, fret: note.fret, until: barStart + note.ringsTo }]
          : [],
      )
      ringing = [...ringing.filter((note) => !struck.has(note.string)), ...rings]
    }
  }
  return withPullTargets(moments)
}

/** Each bar with its start on one line of time that the pickup is part of. */
export function placedBars(part: Part): readonly { readonly bar: Bar; readonly barStart: Ticks }[] {
  const pickup = part.bars[0]?.number === 0 ? (part.bars[0]?.length ?? 0) : 0
  return part.bars.map((bar) => ({ bar, barStart: bar.number === 0 ? 0 : pickup + bar.start }))
}

/** Single notes that all lie inside a shape of the chord in force are played with that shape's fingers, as its grid shows them. */
function insideShape(presses: readonly Pressed[], symbol: string | null, shapes: readonly Shape[]): readonly Pressed[] {
  if (symbol === null || presses.some((press) => press.finger !== null)) return presses
  const holder = shapes.find(
    (shape) =>
      shape.label === symbol &&
      shape.fingersGiven &&
      presses.every(({ string, fret }) => shape.frets[string - 1] === fret),
  )
  if (holder === undefined) return presses
  return presses.map((press) => ({
    ...press,
    finger: press.fret === 0 ? null : (holder.fingers[press.string - 1] ?? null),
  }))
}

/** Frets a hand spans without a stretch: one finger a fret. Common practice. */
const HAND_FRETS = 3

/** Single notes keep what rings as long as the hand can hold it; a new shape lets go of what rang before. */
function withRinging(own: readonly Pressed[], ringing: readonly Pressed[]): Grip {
  const whole = gripOf([...own, ...ringing])
  const frets = whole.presses.map((press) => press.fret)
  const near = Math.max(...frets) - Math.min(...frets) <= HAND_FRETS
  return ringing.length > 0 && near && feasibleFingerings(whole).length > 0 ? whole : gripOf(own)
}

function ownPresses(event: Strike): readonly Pressed[] {
  return event.notes.flatMap((note) => {
    if (note.fret === null) return []
    const finger = note.fingerGiven ? note.finger : null
    const press = { string: note.string, fret: note.fret, finger }
    const held = note.from === 'hammered' && note.fromFret !== null && note.fromFret > 0
    return held ? [press, { string: note.string, fret: note.fromFret, finger: null }] : [press]
  })
}

function shapePresses(event: Strike, shape: Shape): readonly Pressed[] {
  const { shift, only, added } = event.target
  const replaced = new Set(added.map((note) => note.string))
  const own = shape.frets.flatMap((fret, at) => {
    const string = at + 1
    if (fret === null || replaced.has(string)) return []
    if (fret === 0 && only !== null && !only.includes(string)) return []
    return [
      { string, fret: fret === 0 ? 0 : fret + shift, finger: shape.fingersGiven ? (shape.fingers[at] ?? null) : null },
    ]
  })
  const extra = added.map(({ string, fret }) => {
    const note = event.notes.find((candidate) => candidate.string === string)
    return { string, fret, finger: note?.fingerGiven ? note.finger : null }
  })
  return [...own, ...extra]
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
    return { ...moment, grip: gripOf([...presses, ...open]) }
  })
}
