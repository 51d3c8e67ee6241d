import { type Grip, gripKey } from './grip.ts'
import type { HandMoment } from './hand-moments.ts'
import { isSound, type RankedFingering } from './rank-fingerings.ts'
import { type FingeringForHand, type HandOnNeck, rankForHand } from './rank-for-hand.ts'

/** How many of the easiest fingerings of a grip are weighed against the moments around it. */
const STATES = 8

/** How many of them keep the fingers borrowed from a shape. */
const FIXED = 2

/** How much of a grip's own cost counts by the number of its presses: in a line of single notes the way decides, not the grip. */
const GRIP_SHARES = [0, 0.2, 0.5]

/** A shape is learnt with one fingering and looked up in its grid: there the grip decides, and the way only between near equals. */
const SHAPE_SHARE = 3

/** What it costs to let go of fingers borrowed from a shape; judgement. */
const LET_GO = 10

/** Equal for moments that ask the same of the hand. */
export function momentKey(moment: HandMoment): string {
  return `${gripKey(moment.grip)}${moment.shape !== null && !moment.plainShape ? '+' : ''}${moment.borrowed ? '~' : ''}${moment.plainShape ? '=' : ''}`
}

/** The ways to hold one moment, each with what it costs by itself. */
export function momentStates(moment: HandMoment, on: HandOnNeck): readonly RankedFingering[] {
  const share = moment.plainShape ? SHAPE_SHARE : (GRIP_SHARES[moment.grip.presses.length] ?? 1)
  return fingeringsOf(moment, on)
    .slice(0, STATES)
    .map(({ fingering, cost, reachCost }) => ({ fingering, cost: (cost - reachCost) * share + reachCost }))
}

/**
 * The fingerings of a moment. A note added to a shape may need the shape's fingers set anew: they are let go where they leave no
 * sound way to play both. Fingers borrowed from a shape are let go where that spares more than it costs.
 */
function fingeringsOf(moment: HandMoment, on: HandOnNeck): readonly FingeringForHand[] {
  const { grip, shape, plainShape, borrowed } = moment
  const fixed = rankForHand(grip, on)
  if (borrowed) {
    const free = rankForHand(released(moment), on).slice(0, STATES - FIXED)
    const dearer = free.map(({ fingering, cost, reachCost }) => ({
      fingering,
      cost: cost + LET_GO,
      reachCost: reachCost + LET_GO,
    }))
    return [...fixed.slice(0, FIXED), ...dearer]
  }
  if (shape === null || plainShape || fixed.some(({ fingering }) => isSound(grip, fingering))) return fixed
  const free = rankForHand(released(moment), on)
  return free.length > 0 ? free : fixed
}

/** The grip of a moment with the fingers that come from a shape left open. */
function released({ grip, event }: HandMoment): Grip {
  const own = new Set(event.notes.filter((note) => note.fingerGiven).map((note) => note.string))
  return { ...grip, presses: grip.presses.map((press) => (own.has(press.string) ? press : { ...press, finger: null })) }
}
