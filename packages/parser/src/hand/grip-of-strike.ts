import type { Strike } from '../score/event.ts'
import type { Finger, Shape } from '../score/shape.ts'
import { feasibleFingerings } from './feasible-fingerings.ts'
import { type Grip, gripOf } from './grip.ts'

interface Pressed {
  readonly string: number
  readonly fret: number | null
  readonly finger: Finger | null
}

/**
 * What the hand holds for single notes: themselves, the fret a hammered one comes from, and what rings on as long as the hand can
 * hold it. Fingers are those of the signs, else of the shape of the chord in force that holds all the notes.
 */
export function gripOfNotes(
  event: Strike,
  around: {
    readonly ringing: readonly { readonly string: number; readonly fret: number }[]
    readonly symbol: string | null
    readonly shapes: readonly Shape[]
  },
): Grip {
  const own = insideShape(ownPresses(event), around.symbol, around.shapes)
  const sounding = new Set(own.map((press) => press.string))
  const still = around.ringing.filter((note) => !sounding.has(note.string))
  return withRinging(
    own,
    still.map(({ string, fret }) => ({ string, fret, finger: null })),
  )
}

/** What the hand holds for a shape: all of it, also where only some strings are struck, moved and added to as the sign says. */
export function gripOfShape(event: Strike, shape: Shape): Grip {
  return gripOf(shapePresses(event, shape))
}

/** Single notes that all lie inside a shape of the chord in force are played with that shape's fingers, as its grid shows them. */
function insideShape(presses: readonly Pressed[], symbol: string | null, shapes: readonly Shape[]): readonly Pressed[] {
  if (symbol === null || presses.some((press) => press.finger !== null)) return presses
  const holder = shapes.find(
    (shape) =>
      shape.label === symbol &&
      shape.frets.every((fret, at) => fret === null || fret === 0 || shape.fingers[at] !== null) &&
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
    return [{ string, fret: fret === 0 ? 0 : fret + shift, finger: shape.fingers[at] ?? null }]
  })
  const extra = added.map(({ string, fret }) => {
    const note = event.notes.find((candidate) => candidate.string === string)
    return { string, fret, finger: note?.fingerGiven ? note.finger : null }
  })
  return [...own, ...extra]
}
