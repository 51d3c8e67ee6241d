import type { Shape, Strike } from '@barwise/parser'
import type { FingerMoves, FingerPlace, Press } from './instruction.ts'
import { notesHeld, shapeHeld } from './press.ts'

/** No finger moves. */
export const NO_MOVES: FingerMoves = { lifted: [], returned: [], taken: [] }

/** The fingers that take over strings of a shape when a note is added: those that press where the shape has another finger. */
export function takenOver(strike: Strike, shape: Shape): readonly FingerPlace[] {
  const own = notesHeld(strike.notes).filter(({ string }) => !strike.target.added.some((one) => one.string === string))
  return own.reduce<readonly FingerPlace[]>((places, { string, fret, finger }) => {
    const usual = shape.fingers[string - 1] ?? null
    return fret === null || fret === 0 || finger === null || usual === null || finger === usual
      ? places
      : withString(places, { finger, strings: [string] })
  }, [])
}

/** What the fingers of added notes do when the shape alone is played again: leave, or go back to their own strings. */
export function leaving(added: readonly Press[], shape: Shape): Pick<FingerMoves, 'lifted' | 'returned'> {
  const fingers = [...new Set(added.flatMap(({ finger }) => finger ?? []))]
  const places = fingers.map((finger) => ({
    finger,
    strings: shapeHeld(shape).flatMap((held) => (held.finger === finger && held.fret !== 0 ? [held.string] : [])),
  }))
  return {
    lifted: places.filter(({ strings }) => strings.length === 0).map(({ finger }) => finger),
    returned: places.filter(({ strings }) => strings.length > 0),
  }
}

function withString(places: readonly FingerPlace[], { finger, strings }: FingerPlace): readonly FingerPlace[] {
  return places.some((one) => one.finger === finger)
    ? places.map((one) => (one.finger === finger ? { finger, strings: [...one.strings, ...strings] } : one))
    : [...places, { finger, strings }]
}
