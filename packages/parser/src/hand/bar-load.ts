import type { Strike } from '../score/event.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Bar, Part } from '../score/part.ts'
import { type FingeredMoment, fingerPart, handOnNeck } from './finger-part.ts'
import { gripSpreadMm } from './grip-spread.ts'
import { type HandChange, handChanges } from './hand-changes.ts'
import { type HandOnNeck, spanOf } from './rank-for-hand.ts'
import { REACHES, SMALL_HAND, SPAN_LIMITS_MM, type WidestSpan } from './span-limits.ts'
import { CEILING_HZ, handCyclesHz } from './strum-speed.ts'

/** What makes a bar hard, each from 0 (nothing) to 1 (the edge of what can be played). */
export interface BarLoad {
  readonly bar: Bar
  /** The tightest change into a moment of this bar, as the share of its time. */
  readonly change: number
  readonly hardestChange: HandChange | null
  /** How far the widest grip spreads the hand. */
  readonly stretch: number
  readonly widest: WidestSpan | null
  readonly strumming: number
  /** Share of the sounds that begin off the beat and last over one. */
  readonly syncopation: number
  /** Different techniques of the fretting hand. */
  readonly techniques: number
  /** All of it as one number from 0 to 1. */
  readonly load: number
}

/** Shares of the parts of a load; judgement. */
const SHARES = { change: 0.4, stretch: 0.15, strumming: 0.2, syncopation: 0.15, techniques: 0.1 }
const MANY_TECHNIQUES = 3
/** The widest span of index and little finger that an adult hand may be asked for. */
const WIDEST_MM = SPAN_LIMITS_MM['1-4'][2]

/** The changes of a part and the load of each of its bars, with the fingers along its cheapest path. */
export function weighPart(
  lesson: Lesson,
  part: Part,
): { readonly changes: readonly HandChange[]; readonly loads: readonly BarLoad[] } {
  const on = handOnNeck(lesson)
  const { moments } = fingerPart(lesson, part)
  const changes = handChanges(on, part, moments)
  const written = changes.filter((change) => !change.atRepeat)
  return { changes, loads: barLoads(on, part.bars, moments, written) }
}

/** The load of each bar, from its fastest change, widest stretch, swings a second, syncopation and techniques. */
function barLoads(
  on: HandOnNeck,
  bars: readonly Bar[],
  moments: readonly FingeredMoment[],
  changes: readonly HandChange[],
): readonly BarLoad[] {
  const changesOf = byBar(changes, (change) => change.to.bar)
  const momentsOf = byBar(moments, (moment) => moment.bar)
  const widestMm = WIDEST_MM * (on.hand === 'small' ? SMALL_HAND : 1)
  return bars.map((bar) => {
    const own = changesOf.get(bar.number) ?? []
    const hardestChange = own.reduce<HandChange | null>(
      (worst, next) => (worst === null || share(next) > share(worst) ? next : worst),
      null,
    )
    const held = momentsOf.get(bar.number) ?? []
    const widest = widestOf(held, on)
    const change = hardestChange === null ? 0 : Math.min(1, share(hardestChange))
    const stretch = Math.min(1, Math.max(0, ...held.map((moment) => gripSpreadMm(on.neck, moment.grip))) / widestMm)
    const strumming = Math.min(1, (handCyclesHz(bar) ?? 0) / CEILING_HZ)
    const syncopation = syncopationOf(bar)
    const techniques = techniquesOf(bar)
    const load =
      SHARES.change * change +
      SHARES.stretch * stretch +
      SHARES.strumming * strumming +
      SHARES.syncopation * syncopation +
      SHARES.techniques * Math.min(1, techniques / MANY_TECHNIQUES)
    return { bar, change, hardestChange, stretch, widest, strumming, syncopation, techniques, load }
  })
}

/** The share of its time that a change takes. */
export function share(change: HandChange): number {
  return change.neededS / change.availableS
}

function byBar<T>(items: readonly T[], barOf: (item: T) => Bar): ReadonlyMap<number, readonly T[]> {
  const found = new Map<number, T[]>()
  for (const item of items) {
    const { number } = barOf(item)
    const own = found.get(number)
    if (own === undefined) found.set(number, [item])
    else own.push(item)
  }
  return found
}

function widestOf(moments: readonly FingeredMoment[], on: HandOnNeck): WidestSpan | null {
  let worst: WidestSpan | null = null
  for (const { grip, fingering } of moments) {
    const next = fingering === null ? null : spanOf(grip, fingering, on)
    if (next === null) continue
    const harder = worst === null || REACHES.indexOf(next.reach) > REACHES.indexOf(worst.reach)
    if (harder) worst = next
  }
  return worst
}

function syncopationOf(bar: Bar): number {
  const sounds = bar.events.filter((event) => event.kind === 'strike')
  if (sounds.length === 0) return 0
  const over = sounds.filter((event) => {
    const offset = event.at % bar.beatTicks
    return offset !== 0 && offset + event.duration > bar.beatTicks
  })
  return over.length / sounds.length
}

function techniquesOf(bar: Bar): number {
  const strikes = bar.events.filter((event): event is Strike => event.kind === 'strike')
  return new Set(strikes.flatMap((event) => (event.technique === null ? [] : [event.technique]))).size
}
