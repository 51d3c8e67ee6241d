import type { Finger } from '../score/shape.ts'
import { coversNothing, feasibleFingerings } from './feasible-fingerings.ts'
import { BURDENS, type Burden, burdensOf } from './fingering-burdens.ts'
import { type Fingering, fingerOnTwoFrets, type Grip } from './grip.ts'

/**
 * What each burden weighs. Fitted to the published fingerings of an open chord data set in nine of its twelve keys (a
 * conditional logit over the feasible fingerings of each shape), measured on the other three; `open-single-off` is judgement, for
 * the set holds six such shapes: a finger alone in open position takes the fret of its number.
 */
const WEIGHTS: Readonly<Record<Burden, number>> = {
  fingers: -1.3,
  'lowest-by-second': 0.98,
  'lowest-by-third': 2.35,
  'lowest-by-fourth': 1.31,
  'gap-narrow': 1.47,
  'gap-wide': 3.71,
  'barre-first': 1.91,
  'barre-second': 4.9,
  'barre-third': 6.07,
  'barre-little': 7.31,
  'barre-pairs': -1.12,
  'barre-full': -2.44,
  'barre-short-of-edge': 1.21,
  'second-finger': 0.33,
  'third-finger': 1.33,
  'little-finger': 1.46,
  'skipped-on-same-fret': 2.32,
  'reach-across': 0.32,
  'open-finger-low': 0.33,
  'open-finger-high': 0.31,
  'open-barre': 1.62,
  'open-pair-low': 1.75,
  'open-single-off': 2.5,
  'one-for-all': -0.92,
  'barre-over-silent': 3.32,
}

const WEIGHT_LIST: readonly number[] = BURDENS.map((burden) => WEIGHTS[burden])

/** A fingering with what it costs the hand; costs compare fingerings of one grip and have no unit. */
export interface RankedFingering {
  readonly fingering: Fingering
  readonly cost: number
}

/** What one fingering of a grip costs the hand. */
function fingeringCost(grip: Grip, fingering: Fingering): number {
  return burdensOf(grip, fingering).reduce((sum, amount, at) => sum + amount * (WEIGHT_LIST[at] ?? 0), 0)
}

/**
 * The feasible fingerings of a grip, easiest first; an empty list when there is none. What the writer fixed is taken as it
 * is, also where it breaks the order that fingerings of our own keep (the usual open A is 2 1 3).
 */
export function rankFingerings(grip: Grip): readonly RankedFingering[] {
  const feasible = feasibleFingerings(grip)
  return (feasible.length > 0 ? feasible : aroundFixed(grip))
    .map((fingering) => ({ fingering, cost: fingeringCost(grip, fingering) }))
    .sort((a, b) => a.cost - b.cost)
}

/**
 * Whether no finger is wanted on two frets, none covers a string that must sound open or lower, and none that the writer left open
 * crosses another.
 */
export function isSound(grip: Grip, fingering: Fingering): boolean {
  return (
    fingerOnTwoFrets(grip, fingering) === null && coversNothing(grip, fingering) && !crossesAnother(grip, fingering)
  )
}

/** Whether a finger that is not fixed lies on a higher fret than a higher finger, or on a lower one than a lower finger. */
function crossesAnother(grip: Grip, fingering: Fingering): boolean {
  return grip.presses.some((press, at) => {
    const finger = fingering[at]
    if (press.finger !== null || finger === undefined || finger === 'T') return false
    return grip.presses.some((other, i) => {
      const against = fingering[i]
      if (against === undefined || against === 'T') return false
      return (finger - against) * (press.fret - other.fret) < 0
    })
  })
}

/**
 * Fingerings that keep the fixed fingers whatever their order; the others only must not press two frets with one finger. Sound
 * ones alone where there are any.
 */
function aroundFixed(grip: Grip): readonly Fingering[] {
  if (grip.presses.every((press) => press.finger === null)) return []
  let partial: readonly Fingering[] = [[]]
  grip.presses.forEach((press, at) => {
    const choices: readonly Finger[] = press.finger === null ? [1, 2, 3, 4] : [press.finger]
    partial = partial.flatMap((start) =>
      choices
        .filter((finger) => press.finger !== null || staysOnOneFret(grip, start, at, finger))
        .map((finger) => [...start, finger]),
    )
  })
  const sound = partial.filter((fingering) => isSound(grip, fingering))
  return sound.length > 0 ? sound : partial
}

function staysOnOneFret(grip: Grip, start: Fingering, at: number, finger: Finger): boolean {
  const fret = grip.presses[at]?.fret
  const clash = grip.presses.some((press, i) => {
    const taken = i < at ? start[i] : press.finger
    return i !== at && taken === finger && press.fret !== fret
  })
  return !clash
}
