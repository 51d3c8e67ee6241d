import type { Fingering, Grip } from './grip.ts'
import type { HandMoment } from './hand-moments.ts'
import { momentKey, momentStates } from './moment-states.ts'
import { playedStart, seconds } from './played-time.ts'
import type { RankedFingering } from './rank-fingerings.ts'
import type { HandOnNeck } from './rank-for-hand.ts'
import { stepCost } from './step-cost.ts'

/** Where a path starts, on whose neck. */
export interface PathOptions extends HandOnNeck {
  /** The moment before, already fingered: the path goes on from there. Null or absent: from nothing. */
  readonly from?: (HandMoment & { readonly fingering: Fingering | null }) | null
}

/**
 * The fingering of every moment along the cheapest path through the part: a shortest path over a layered graph (the idea
 * of Sayegh 1989, from memory). Null where a grip has no feasible fingering; the path starts afresh there. Moments that
 * press nothing leave the hand where it is.
 */
export function fingeringPath(moments: readonly HandMoment[], options: PathOptions): readonly (Fingering | null)[] {
  const pressed = moments.filter(({ grip }) => grip.presses.length > 0)
  const path = pathThrough(pressed, options)
  let at = 0
  return moments.map(({ grip }) => (grip.presses.length === 0 ? [] : (path[at++] ?? null)))
}

interface Layer {
  readonly key: string
  readonly grip: Grip
  readonly states: readonly RankedFingering[]
}

function pathThrough(moments: readonly HandMoment[], options: PathOptions): readonly (Fingering | null)[] {
  const layers = layersOf(moments, options)
  const transitions = new Map<string, readonly (readonly number[])[]>()
  const back: (readonly number[])[] = []
  const ends: number[] = []
  const start = startLayer(options.from ?? null)
  let costs: readonly number[] = start === null ? [] : [0]
  layers.forEach((layer, at) => {
    const before = layers[at - 1] ?? start
    const moment = moments[at]
    if (before === null || moment === undefined || before.states.length === 0 || layer.states.length === 0) {
      costs = layer.states.map((state) => state.cost)
      back.push([])
      ends.push(costs.indexOf(Math.min(...costs)))
      return
    }
    const last = moments[at - 1] ?? options.from ?? null
    const availableS = last === null ? null : seconds(playedStart(moment) - playedStart(last), last.bar)
    const asked = [moment.slides, moment.hammers, moment.holds].map((strings) => strings.join()).join('>')
    const key = `${before.key}>${layer.key}>${asked}>${availableS}`
    let steps = transitions.get(key)
    if (steps === undefined) {
      steps = layer.states.map(({ fingering: to }) =>
        before.states.map(({ fingering: from }) =>
          stepCost(options, { before: before.grip, from, moment, to, availableS }),
        ),
      )
      transitions.set(key, steps)
    }
    const best = steps.map((row) => cheapest(row, costs))
    back.push(best.map((choice) => choice.from))
    costs = layer.states.map((state, i) => state.cost + (best[i]?.cost ?? 0))
    ends.push(costs.indexOf(Math.min(...costs)))
  })
  return readBack(layers, back, ends)
}

function layersOf(moments: readonly HandMoment[], on: HandOnNeck): readonly Layer[] {
  const known = new Map<string, Layer>()
  return moments.map((moment) => {
    const key = momentKey(moment)
    const layer = known.get(key) ?? { key, grip: moment.grip, states: momentStates(moment, on) }
    known.set(key, layer)
    return layer
  })
}

function startLayer(from: PathOptions['from']): Layer | null {
  if (from == null || from.fingering === null || from.fingering.length === 0) return null
  return { key: 'start', grip: from.grip, states: [{ fingering: from.fingering, cost: 0 }] }
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

/** The states chosen, from the last moment back. Where a stretch ends before a grip that nobody can form, its own cheapest end counts. */
function readBack(
  layers: readonly Layer[],
  back: readonly (readonly number[])[],
  ends: readonly number[],
): readonly (Fingering | null)[] {
  const chosen: (Fingering | null)[] = new Array(layers.length).fill(null)
  let state = ends.at(-1) ?? 0
  for (let at = layers.length - 1; at >= 0; at--) {
    chosen[at] = layers[at]?.states[state]?.fingering ?? null
    state = back[at]?.[state] ?? ends[at - 1] ?? 0
  }
  return chosen
}
