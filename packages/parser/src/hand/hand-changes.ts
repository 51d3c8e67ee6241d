import type { Bar } from '../score/part.ts'
import type { Finger } from '../score/shape.ts'
import { TICKS_PER_QUARTER } from '../score/time.ts'
import type { FingeredMoment } from './finger-part.ts'
import { positionOf } from './hand-path.ts'
import { type Neck, travelMm } from './neck.ts'

/** Seconds a finger needs to leave and settle, and for each doubling of its way: the form is Fitts 1954, the numbers judgement. */
export const SETTLE_S = 0.08
export const TRAVEL_S = 0.06
/** The usable part of a fret space, in millimetres. */
const TARGET_MM = 20

/** A change of the fretting hand between two moments that follow each other. */
export interface HandChange {
  readonly from: FingeredMoment
  readonly to: FingeredMoment
  readonly neededS: number
  /** Seconds there are at the tempo of the bar it starts in. */
  readonly availableS: number
  /** Fingers that have to move, the index first. */
  readonly fingers: readonly Finger[]
}

/** Seconds of a stretch of ticks at a tempo counted in beats of `beatTicks`. */
export function seconds(ticks: number, bar: Bar, tempoBpm: number = bar.tempoBpm): number {
  return (ticks / bar.beatTicks) * (60 / tempoBpm)
}

/** The changes of a part: between each moment and the next where a finger has to move. */
export function handChanges(neck: Neck, moments: readonly FingeredMoment[]): readonly HandChange[] {
  const changes: HandChange[] = []
  let last: FingeredMoment | null = null
  let lastNeeded = 0
  for (const moment of moments) {
    if (moment.fingering === null || moment.grip.presses.length === 0) continue
    if (last !== null) {
      const { neededS, fingers } = timeNeeded(neck, last, moment)
      if (fingers.length > 0) {
        changes.push({
          from: last,
          to: moment,
          neededS,
          availableS: seconds(moment.start - lastNeeded, last.bar),
          fingers,
        })
      }
    }
    last = moment
    lastNeeded = moment.start
  }
  return changes
}

/** The longest time any finger needs, with the fingers that move. A shape moved whole, or slid, needs no settling. */
function timeNeeded(
  neck: Neck,
  from: FingeredMoment,
  to: FingeredMoment,
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
    const way = Math.min(...origins.map((place) => travelMm(neck, place, press)))
    const settle = whole || to.slides.includes(press.string) ? 0 : SETTLE_S
    neededS = Math.max(neededS, settle + TRAVEL_S * Math.log2(way / TARGET_MM + 1))
    fingers.add(finger)
  })
  return { neededS, fingers: [...fingers].sort() }
}

function movedWhole(from: FingeredMoment, to: FingeredMoment): boolean {
  if (from.grip.presses.length !== to.grip.presses.length) return false
  const steps = new Set(to.grip.presses.map((press, at) => press.fret - (from.grip.presses[at]?.fret ?? 0)))
  const sameStrings = to.grip.presses.every((press, at) => press.string === from.grip.presses[at]?.string)
  return sameStrings && steps.size === 1 && String(from.fingering) === String(to.fingering)
}

/** The fastest tempo, in the bar's own beats a minute, at which a change fits. */
export function fastestTempo(change: HandChange): number {
  return Math.floor(change.from.bar.tempoBpm * (change.availableS / change.neededS))
}

/** Ticks in a quarter note as beats of a bar count them, for messages in beats. */
export function beatsOf(ticks: number, bar: Bar): number {
  return ticks / (bar.beatTicks || TICKS_PER_QUARTER)
}
