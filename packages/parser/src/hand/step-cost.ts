import type { Finger } from '../score/shape.ts'
import type { Fingering, Grip } from './grip.ts'
import type { HandMoment } from './hand-moments.ts'
import { positionOf } from './hand-position.ts'
import { moveTime } from './move-time.ts'
import { type Neck, travelMm } from './neck.ts'
import type { HandOnNeck } from './rank-for-hand.ts'

/** Costs of going from one grip to the next; judgement. */
const PLACE = 0.35
const LIFT_AND_MOVE = 0.7
const GUIDE = 0.35
const PER_SHIFT = 0.6
/** Millimetres that a fingertip travels for a cost of 1. */
const MM_FOR_ONE = 200
const OTHER_FINGER_ON_SAME_NOTE = 3
const SLIDE_BY_OTHER_FINGER = 30
const HELD_BY_OTHER_FINGER = 30
/** What a step costs for each whole time that it takes beyond the share where it begins to be tight; judgement. */
const TIGHT = 30
const TIGHT_FROM = 0.8
/** What it costs beside where it does not fit: the fewer such steps the better. */
const MISSED = 6

/** A step of the hand: from one fingered grip to that of the next moment, in the seconds there are (null: in its own time). */
export interface HandStep {
  readonly before: Grip
  readonly from: Fingering
  readonly moment: HandMoment
  readonly to: Fingering
  readonly availableS: number | null
}

/** What a step costs, in the unit of the grips' own costs. */
export function stepCost(on: HandOnNeck, { before, from, moment, to, availableS }: HandStep): number {
  const after = moment.grip
  let cost = availableS === null ? 0 : rushCost(on, { before, from, moment, to, availableS })
  const held = new Map<Finger, Set<string>>()
  const fingerOn = new Map<string, Finger>()
  from.forEach((finger, at) => {
    const press = before.presses[at]
    if (press === undefined) return
    const place = `${press.string}.${press.fret}`
    const places = held.get(finger) ?? new Set<string>()
    places.add(place)
    held.set(finger, places)
    fingerOn.set(place, finger)
  })
  const counted = new Set<Finger>()
  to.forEach((finger, at) => {
    const press = after.presses[at]
    if (press === undefined) return
    const place = `${press.string}.${press.fret}`
    const other = fingerOn.get(place)
    if (other !== undefined && other !== finger)
      cost += moment.holds.includes(press.string) ? HELD_BY_OTHER_FINGER : OTHER_FINGER_ON_SAME_NOTE
    if (moment.slides.includes(press.string) && !slidByItself(before, from, press.string, finger))
      cost += SLIDE_BY_OTHER_FINGER
    if (counted.has(finger) || held.get(finger)?.has(place)) return
    counted.add(finger)
    cost += moveCost(on.neck, before, from, press, finger)
  })
  const shift = positionOf(after, to) - positionOf(before, from)
  return Number.isFinite(shift) ? cost + PER_SHIFT * Math.log2(1 + Math.abs(shift)) : cost
}

/** Steps that leave hardly enough time cost more, so that a nearer finger is taken where there is one. */
function rushCost(
  on: HandOnNeck,
  { before, from, moment, to, availableS }: HandStep & { readonly availableS: number },
): number {
  const { neededS } = moveTime(on, { grip: before, fingering: from }, { ...moment, fingering: to })
  const share = neededS / availableS
  return TIGHT * Math.max(0, share - TIGHT_FROM) + (share > 1 ? MISSED : 0)
}

function slidByItself(before: Grip, from: Fingering, string: number, finger: Finger): boolean {
  const at = before.presses.findIndex((press) => press.string === string)
  return at < 0 || from[at] === finger
}

function moveCost(
  neck: Neck,
  before: Grip,
  from: Fingering,
  press: { readonly string: number; readonly fret: number },
  finger: Finger,
): number {
  const at = from.indexOf(finger)
  const last = before.presses[at]
  if (at < 0 || last === undefined) return PLACE
  if (last.string === press.string || last.fret === press.fret) return GUIDE + travelMm(neck, last, press) / MM_FOR_ONE
  return LIFT_AND_MOVE + travelMm(neck, last, press) / MM_FOR_ONE
}
