import type { Finger } from '../score/shape.ts'
import { type Fingering, type Grip, gripKey } from './grip.ts'
import type { HandMoment } from './hand-moments.ts'
import { type Neck, travelMm } from './neck.ts'
import { isSound, type RankedFingering } from './rank-fingerings.ts'
import { type FingeringForHand, type HandOnNeck, rankForHand } from './rank-for-hand.ts'

/** How many of the easiest fingerings of a grip are weighed against the moments around it. */
const STATES = 8

/** How much of a grip's own cost counts by the number of its presses: in a line of single notes the way decides, not the grip. */
const GRIP_SHARES = [0, 0.2, 0.5]

/** Costs of going from one grip to the next, in the unit of the grips' own costs; judgement. */
const PLACE = 0.35
const LIFT_AND_MOVE = 0.7
const GUIDE = 0.35
const PER_SHIFT = 0.6
const OTHER_FINGER_ON_SAME_NOTE = 3
const SLIDE_BY_OTHER_FINGER = 30
const HELD_BY_OTHER_FINGER = 30
const LET_GO = 10

/** Where a path starts, on whose neck. */
export interface PathOptions extends HandOnNeck {
  /** The moment before, already fingered: the path goes on from there. Null or absent: from nothing. */
  readonly from?: { readonly grip: Grip; readonly fingering: Fingering | null } | null
}

/**
 * The fingering of every moment along the cheapest path through the part: a shortest path over a layered graph (the idea
 * of Sayegh 1989, from memory). Null where a grip has no feasible fingering; the path starts afresh there.
 */
export function fingeringPath(moments: readonly HandMoment[], options: PathOptions): readonly (Fingering | null)[] {
  const known = new Map<string, Layer>()
  const layers = moments.map((moment) => {
    const key = momentKey(moment)
    const layer = known.get(key) ?? layerOf(moment, key, options)
    known.set(key, layer)
    return layer
  })
  const transitions = new Map<string, readonly (readonly number[])[]>()
  const back: (readonly number[])[] = []
  const start = startLayer(options.from ?? null)
  let costs: readonly number[] = start === null ? [] : [0]
  layers.forEach((layer, at) => {
    const before = layers[at - 1] ?? start
    const moment = moments[at]
    if (before === null || moment === undefined || before.states.length === 0 || layer.states.length === 0) {
      costs = layer.states.map((state) => state.cost)
      back.push([])
      return
    }
    const key = `${before.key}>${layer.key}>${moment.slides.join()}>${moment.holds.join()}`
    let steps = transitions.get(key)
    if (steps === undefined) {
      steps = layer.states.map((to) =>
        before.states.map((from) =>
          stepCost(options.neck, { grip: before.grip, state: from }, { grip: layer.grip, state: to, moment }),
        ),
      )
      transitions.set(key, steps)
    }
    const best = steps.map((row) => cheapest(row, costs))
    back.push(best.map((choice) => choice.from))
    costs = layer.states.map((state, i) => state.cost + (best[i]?.cost ?? 0))
  })
  return readBack(layers, back, costs)
}

/** Equal for moments that ask the same of the hand. */
function momentKey(moment: HandMoment): string {
  return `${gripKey(moment.grip)}${moment.shape !== null && !moment.plainShape ? '+' : ''}${moment.borrowed ? '~' : ''}`
}

function startLayer(from: PathOptions['from']): Layer | null {
  if (from == null || from.fingering === null) return null
  return { key: 'start', grip: from.grip, states: [{ fingering: from.fingering, cost: 0 }] }
}

interface Layer {
  readonly key: string
  readonly grip: Grip
  readonly states: readonly RankedFingering[]
}

const EMPTY: FingeringForHand = { fingering: [], cost: 0, reachCost: 0 }

function layerOf(moment: HandMoment, key: string, on: HandOnNeck): Layer {
  const { grip } = moment
  const share = GRIP_SHARES[grip.presses.length] ?? 1
  const ranked = grip.presses.length === 0 ? [EMPTY] : fingeringsOf(moment, on).slice(0, STATES)
  const states = ranked.map(({ fingering, cost, reachCost }) => ({
    fingering,
    cost: (cost - reachCost) * share + reachCost,
  }))
  return { key, grip, states }
}

/**
 * The fingerings of a moment. A note added to a shape may need the shape's fingers set anew: they are let go where they leave no
 * sound way to play both. Fingers borrowed from a shape are let go where that spares more than it costs.
 */
function fingeringsOf(moment: HandMoment, on: HandOnNeck): readonly FingeringForHand[] {
  const { grip, shape, plainShape, borrowed } = moment
  const fixed = rankForHand(grip, on)
  if (borrowed) {
    const free = rankForHand(released(moment), on).slice(0, STATES / 2)
    const dearer = free.map(({ fingering, cost, reachCost }) => ({
      fingering,
      cost: cost + LET_GO,
      reachCost: reachCost + LET_GO,
    }))
    return [...fixed.slice(0, STATES / 2), ...dearer]
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

function cheapest(row: readonly number[], costs: readonly number[]): { readonly from: number; readonly cost: number } {
  let from = 0
  let cost = Number.POSITIVE_INFINITY
  row.forEach((step, at) => {
    const total = step + (costs[at] ?? 0)
    if (total < cost) {
      cost = total
      from = at
    }
  })
  return { from, cost }
}

function readBack(
  layers: readonly Layer[],
  back: readonly (readonly number[])[],
  lastCosts: readonly number[],
): readonly (Fingering | null)[] {
  const chosen: (Fingering | null)[] = new Array(layers.length).fill(null)
  let state = lastCosts.indexOf(Math.min(...lastCosts))
  for (let at = layers.length - 1; at >= 0; at--) {
    const layer = layers[at]
    chosen[at] = layer?.states[state]?.fingering ?? null
    const from = back[at]?.[state]
    if (from !== undefined) state = from
    else state = 0
  }
  return chosen
}

/** What it costs to go from one fingered grip to the next. */
function stepCost(
  neck: Neck,
  { grip: before, state: from }: { readonly grip: Grip; readonly state: RankedFingering },
  {
    grip: after,
    state: to,
    moment,
  }: { readonly grip: Grip; readonly state: RankedFingering; readonly moment: HandMoment },
): number {
  let cost = 0
  const held = new Map<Finger, Set<string>>()
  const fingerOn = new Map<string, Finger>()
  from.fingering.forEach((finger, at) => {
    const press = before.presses[at]
    if (press === undefined) return
    const place = `${press.string}.${press.fret}`
    const places = held.get(finger) ?? new Set<string>()
    places.add(place)
    held.set(finger, places)
    fingerOn.set(place, finger)
  })
  const counted = new Set<Finger>()
  to.fingering.forEach((finger, at) => {
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
    cost += moveCost(neck, before, from, press, finger)
  })
  const shift = positionOf(after, to.fingering) - positionOf(before, from.fingering)
  return Number.isFinite(shift) ? cost + PER_SHIFT * Math.log2(1 + Math.abs(shift)) : cost
}

function slidByItself(before: Grip, from: RankedFingering, string: number, finger: Finger): boolean {
  const at = before.presses.findIndex((press) => press.string === string)
  return at < 0 || from.fingering[at] === finger
}

function moveCost(
  neck: Neck,
  before: Grip,
  from: RankedFingering,
  press: { readonly string: number; readonly fret: number },
  finger: Finger,
): number {
  const at = from.fingering.indexOf(finger)
  const last = before.presses[at]
  if (at < 0 || last === undefined) return PLACE
  if (last.string === press.string || last.fret === press.fret) return GUIDE + travelMm(neck, last, press) / 200
  return LIFT_AND_MOVE + travelMm(neck, last, press) / 200
}

/** Where the hand is, as the fret its index finger is at or over; not a number when nothing is pressed. */
export function positionOf(grip: Grip, fingering: Fingering): number {
  const places = fingering.flatMap((finger, at) => {
    const fret = grip.presses[at]?.fret
    return finger === 'T' || fret === undefined ? [] : [fret - (finger - 1)]
  })
  return places.length === 0 ? Number.NaN : places.reduce((sum, place) => sum + place, 0) / places.length
}
