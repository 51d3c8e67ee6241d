import type { Finger } from '../score/shape.ts'
import type { Fingering, Grip } from './grip.ts'
import { positionOf } from './hand-position.ts'
import { travelMm } from './neck.ts'
import type { HandOnNeck } from './rank-for-hand.ts'

/** The usable part of a fret space, in millimetres; judgement. */
const TARGET_MM = 20

/** A grip with its fingers. */
export interface HeldGrip {
  readonly grip: Grip
  readonly fingering: Fingering | null
}

/** A grip that is reached, with the strings whose notes slide in or are hammered on. */
export interface ReachedGrip extends HeldGrip {
  readonly slides: readonly number[]
  readonly hammers: readonly number[]
}

/**
 * The longest time any finger needs from one grip to the next, in seconds, with the fingers that move, the index first. A shape
 * moved whole, or slid, needs no settling; a finger that was free waits over the fret it hammers.
 */
export function moveTime(
  { neck, pace }: Pick<HandOnNeck, 'neck' | 'pace'>,
  from: HeldGrip,
  to: ReachedGrip,
): { readonly neededS: number; readonly fingers: readonly Finger[] } {
  const whole = movedWhole(from, to)
  const position = Math.max(1, Math.round(positionOf(from.grip, from.fingering ?? [])))
  const fingers = new Set<Finger>()
  let neededS = 0
  to.grip.presses.forEach((press, at) => {
    const finger = to.fingering?.[at]
    if (finger === undefined) return
    const places = from.grip.presses.filter((_, i) => from.fingering?.[i] === finger)
    if (places.some((place) => place.string === press.string && place.fret === press.fret)) return
    if (
      places.some((place) => place.fret === press.fret) &&
      to.grip.presses.some(
        (other, i) =>
          to.fingering?.[i] === finger && places.some((p) => p.string === other.string && p.fret === other.fret),
      )
    )
      return
    const hover = { string: press.string, fret: Math.max(1, finger === 'T' ? position : position + finger - 1) }
    const origins = places.length > 0 ? places : [hover]
    const waits = places.length === 0 && to.hammers.includes(press.string)
    const way = waits ? 0 : Math.min(...origins.map((place) => travelMm(neck, place, press)))
    const settle = whole || to.slides.includes(press.string) ? 0 : pace.settleS
    neededS = Math.max(neededS, settle + pace.travelS * Math.log2(way / TARGET_MM + 1))
    fingers.add(finger)
  })
  return { neededS, fingers: [...fingers].sort() }
}

function movedWhole(from: HeldGrip, to: HeldGrip): boolean {
  if (from.grip.presses.length !== to.grip.presses.length) return false
  const steps = new Set(to.grip.presses.map((press, at) => press.fret - (from.grip.presses[at]?.fret ?? 0)))
  const sameStrings = to.grip.presses.every((press, at) => press.string === from.grip.presses[at]?.string)
  return sameStrings && steps.size === 1 && String(from.fingering) === String(to.fingering)
}
