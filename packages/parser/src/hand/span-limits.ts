import type { Neck } from './neck.ts'
import { tipMm } from './neck.ts'

/** How far a hand has to open. */
export type Reach = 'comfortable' | 'stretch' | 'very hard' | 'not playable'

export const REACHES: readonly Reach[] = ['comfortable', 'stretch', 'very hard', 'not playable']

/** Two fingers of the fretting hand, lower first; the thumb has no limits here. */
export type FingerPair = '1-2' | '2-3' | '3-4' | '1-3' | '2-4' | '1-4'

/**
 * The largest span in millimetres that is still comfortable, a stretch, very hard, for an adult hand. The first two rest
 * on the 90th to 95th and the 99th percentile of 2,012 published shapes of an open chord data set, rounded up; the third
 * is judgement, bounded by a small hand's flat index-to-little span of 152 mm (Boyle, Boyle, Booker 2015).
 */
export const SPAN_LIMITS_MM: Readonly<Record<FingerPair, readonly [number, number, number]>> = {
  '1-2': [40, 68, 85],
  '2-3': [34, 45, 68],
  '3-4': [34, 54, 72],
  '1-3': [68, 79, 110],
  '2-4': [54, 68, 105],
  '1-4': [88, 99, 135],
}

/** A small hand's share of an adult's spans: women's hands are on average 7/8 of men's (Leone 2003, as quoted by Boyle et al.). */
export const SMALL_HAND = 0.875

export type HandSize = 'adult' | 'small'

/**
 * Judges the span between two fingers.
 *
 * @example judgeSpan('1-4', 98.8, 'adult') // 'stretch'
 */
function judgeSpan(pair: FingerPair, spanMm: number, hand: HandSize): Reach {
  const scale = hand === 'small' ? SMALL_HAND : 1
  const [comfortable, stretch, veryHard] = SPAN_LIMITS_MM[pair]
  if (spanMm <= comfortable * scale) return 'comfortable'
  if (spanMm <= stretch * scale) return 'stretch'
  if (spanMm <= veryHard * scale) return 'very hard'
  return 'not playable'
}

/** A finger other than the thumb and the fret it presses. */
export interface FingerAt {
  readonly finger: 1 | 2 | 3 | 4
  readonly fret: number
}

/** The widest pair of a grip: which fingers, how far apart along the neck, and how hard that is. */
export interface WidestSpan {
  readonly pair: FingerPair
  readonly spanMm: number
  readonly reach: Reach
  readonly frets: readonly [number, number]
}

/** Judges every pair of fingers and returns the worst; null when fewer than two fingers press. */
export function widestSpan(neck: Neck, fingers: readonly FingerAt[], hand: HandSize): WidestSpan | null {
  let worst: WidestSpan | null = null
  for (const low of fingers) {
    for (const high of fingers) {
      if (low.finger >= high.finger) continue
      const pair = `${low.finger}-${high.finger}` as FingerPair
      const spanMm = Math.abs(tipMm(neck, high.fret) - tipMm(neck, low.fret))
      const reach = judgeSpan(pair, spanMm, hand)
      const rank = REACHES.indexOf(reach)
      const worstRank = worst === null ? -1 : REACHES.indexOf(worst.reach)
      if (rank > worstRank || (rank === worstRank && worst !== null && spanMm > worst.spanMm)) {
        worst = { pair, spanMm, reach, frets: [low.fret, high.fret] }
      }
    }
  }
  return worst
}
