import type { Fingering, Grip } from './grip.ts'
import type { HandPace } from './hand-pace.ts'
import type { Neck } from './neck.ts'
import { type RankedFingering, rankFingerings } from './rank-fingerings.ts'
import { type FingerAt, type HandSize, type Reach, type WidestSpan, widestSpan } from './span-limits.ts'

/** The hand that plays: its size and pace, and the neck it is on. */
export interface HandOnNeck {
  readonly neck: Neck
  readonly hand: HandSize
  readonly pace: HandPace
}

/**
 * What a reach adds to the cost of a fingering, in the unit of `rankFingerings`: little for a stretch, so that the usual
 * fingering is kept, much for one that hardly anybody reaches. Judgement; with it slightly more published fingerings come first.
 */
const REACH_COST: Readonly<Record<Reach, number>> = { comfortable: 0, stretch: 1, 'very hard': 4, 'not playable': 30 }

/** A fingering with its cost for one hand. */
export interface FingeringForHand extends RankedFingering {
  /** What of the cost is reach: it counts in full also where the rest of a grip's cost counts less. */
  readonly reachCost: number
}

/**
 * The feasible fingerings of a grip, easiest first for one hand on one neck: on a bass two frets ask for other fingers than on a
 * ukulele. An empty list when there is none.
 */
export function rankForHand(grip: Grip, on: HandOnNeck): readonly FingeringForHand[] {
  return rankFingerings(grip)
    .map(({ fingering, cost }) => {
      const reachCost = REACH_COST[spanOf(grip, fingering, on)?.reach ?? 'comfortable']
      return { fingering, cost: cost + reachCost, reachCost }
    })
    .sort((a, b) => a.cost - b.cost)
}

/** The span of a fingered grip that asks most of a hand; null when fewer than two fingers press. The thumb is left aside. */
export function spanOf(grip: Grip, fingering: Fingering, { neck, hand }: HandOnNeck): WidestSpan | null {
  const fingers = fingering.flatMap((finger, at): readonly FingerAt[] => {
    const fret = grip.presses[at]?.fret
    return finger === 'T' || fret === undefined ? [] : [{ finger, fret }]
  })
  return widestSpan(neck, fingers, hand)
}
