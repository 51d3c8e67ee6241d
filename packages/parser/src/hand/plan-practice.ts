import type { Lesson } from '../score/lesson.ts'
import type { Bar, Part } from '../score/part.ts'
import type { Finger } from '../score/shape.ts'
import { type BarLoad, share, weighPart } from './bar-load.ts'
import type { HandChange } from './hand-changes.ts'
import { COMFORTABLE_HZ, handCyclesHz } from './strum-speed.ts'

/** Why a stretch is worth looping. */
export type LoopReason =
  /** The change into a grip takes most of its time: names of what is left and reached (null: no name), the frets, the time there is. */
  | {
      readonly kind: 'change'
      readonly from: string | null
      readonly to: string | null
      readonly fromFret: number | null
      readonly toFret: number | null
      readonly availableS: number
      /** How it is made inside one shape, null between two. */
      readonly within: WithinShape | null
      /** Whether no other change of the plan takes more of its time. */
      readonly tightest: boolean
    }
  | { readonly kind: 'stretch'; readonly fingers: readonly [number, number]; readonly frets: readonly [number, number] }
  | { readonly kind: 'technique'; readonly technique: 'hammer' | 'pull' | 'slide' }
  | { readonly kind: 'syncopation' }
  | { readonly kind: 'strumming'; readonly cyclesHz: number }

/** A change inside one shape: it is moved along the neck, or fingers move for notes that come and go, the index first. */
export type WithinShape = { readonly kind: 'moved' } | { readonly kind: 'fingers'; readonly fingers: readonly Finger[] }

/** Bars (and beats, counted as the part counts them) worth playing round and round. */
export interface PracticeLoop {
  readonly bar: number
  readonly fromBeat: number
  readonly toBeat: number
  /** Whether the loop is the whole bar. */
  readonly wholeBar: boolean
  /** Whether it leads into the bar: from the last grip of the bar played before. */
  readonly into: boolean
  readonly reason: LoopReason
}

/** How to practise a part: tempi in the part's counts a minute, climbing to the goal; at most three loops; minutes a sitting. */
export interface PartPlan {
  readonly ladderBpm: readonly number[]
  readonly loops: readonly PracticeLoop[]
  readonly minutes: number
}

/** The share of its time that the hardest change may take where practice starts. */
const START_SHARE = 0.6
/** Practice never starts below this share of the goal, nor above the other; judgement. */
const SLOWEST = 0.5
const FASTEST = 0.85
const RUNGS = 6
const LOOPS = 3

/** A plan from the part's own hard places: the ladder starts where the hardest change takes six tenths of its time. */
export function planPractice(lesson: Lesson, part: Part): PartPlan {
  const { changes, loads } = weighPart(lesson, part)
  const distinct = loads.filter(({ bar }) => bar.sameAs === null)
  const ladderBpm = ladder(lesson, part, changes)
  const loops = loopsOf(distinct)
  return { ladderBpm, loops, minutes: Math.min(20, 2 * ladderBpm.length + 2 * loops.length) }
}

function ladder(lesson: Lesson, part: Part, changes: readonly HandChange[]): readonly number[] {
  const first = part.bars.find((bar) => bar.number > 0)
  const goal = lesson.settings.goalBpm ?? first?.tempoBpm ?? lesson.settings.tempoBpm
  const fits = changes.map((change) => (change.from.bar.tempoBpm * START_SHARE) / share(change))
  const swings = part.bars.flatMap((bar) => {
    const hz = handCyclesHz(bar, 1)
    return hz === null ? [] : [COMFORTABLE_HZ / hz]
  })
  const slow = [...fits, ...swings].reduce((slowest, tempo) => Math.min(slowest, tempo), goal * FASTEST)
  const start = Math.round(Math.max(goal * SLOWEST, slow))
  const rungs = Math.min(RUNGS, Math.max(2, Math.floor((goal - start) / 3) + 1))
  const steps = Array.from({ length: rungs }, (_, rung) => start + ((goal - start) * rung) / (rungs - 1))
  const even = steps.map((tempo, at) =>
    at === rungs - 1 ? goal : goal - start >= 12 ? 2 * Math.round(tempo / 2) : Math.round(tempo),
  )
  return [...new Set(even)]
}

function loopsOf(loads: readonly BarLoad[]): readonly PracticeLoop[] {
  const loops: PracticeLoop[] = []
  const byLoad = [...loads].filter(({ load }) => load > 0).sort((a, b) => b.load - a.load)
  for (const load of byLoad) {
    const loop = loopOf(load, loops)
    if (loop !== null) loops.push(loop)
    if (loops.length === LOOPS) break
  }
  return markTightest(loops, loads).sort((a, b) => a.bar - b.bar)
}

function markTightest(loops: readonly PracticeLoop[], loads: readonly BarLoad[]): PracticeLoop[] {
  const shareOf = (bar: number): number => loads.find((load) => load.bar.number === bar)?.change ?? 0
  const changes = loops.filter(({ reason }) => reason.kind === 'change')
  const tightest = [...changes].sort((a, b) => shareOf(b.bar) - shareOf(a.bar))[0]
  return loops.map((loop) =>
    loop === tightest && loop.reason.kind === 'change' ? { ...loop, reason: { ...loop.reason, tightest: true } } : loop,
  )
}

/** The strongest reason of a bar that no loop has given yet; changes between the same grips are one reason. */
function loopOf(load: BarLoad, taken: readonly PracticeLoop[]): PracticeLoop | null {
  const { bar } = load
  const beats = Math.max(1, Math.round(bar.length / bar.beatTicks))
  const toBeat = beats + bar.firstBeat
  const whole = { bar: bar.number, fromBeat: 1 + bar.firstBeat, toBeat, wholeBar: true, into: false }
  const used = new Set(taken.map(({ reason }) => keyOf(reason)))
  const fresh = (loop: PracticeLoop): PracticeLoop | null => (used.has(keyOf(loop.reason)) ? null : loop)
  const found: (PracticeLoop | null)[] = []
  if (load.hardestChange?.to.event.technique === null && load.change > 0.35)
    found.push(fresh(changeLoop(bar, load.hardestChange)))
  if (load.widest !== null && load.widest.reach !== 'comfortable') {
    const [low, high] = load.widest.pair.split('-').map(Number)
    found.push(
      fresh({ ...whole, reason: { kind: 'stretch', fingers: [low ?? 1, high ?? 4], frets: load.widest.frets } }),
    )
  }
  const acted = bar.events.find((event) => event.kind === 'strike' && event.technique !== null)
  if (acted?.kind === 'strike' && acted.technique !== null) {
    const beat = Math.floor(acted.at / bar.beatTicks) + 1 + bar.firstBeat
    found.push(
      fresh({
        bar: bar.number,
        fromBeat: beat,
        toBeat: beat,
        wholeBar: beats === 1,
        into: false,
        reason: { kind: 'technique', technique: acted.technique },
      }),
    )
  }
  if (load.syncopation > 0) found.push(fresh({ ...whole, reason: { kind: 'syncopation' } }))
  if (load.strumming > 0.4)
    found.push(fresh({ ...whole, reason: { kind: 'strumming', cyclesHz: handCyclesHz(bar) ?? 0 } }))
  return found.find((loop) => loop !== null) ?? null
}

function changeLoop(bar: Bar, change: HandChange): PracticeLoop {
  const { from, to } = change
  const toBeat = Math.floor(to.event.at / bar.beatTicks) + 1 + bar.firstBeat
  const sameBar = from.bar.number === bar.number
  const fromBeat = sameBar ? Math.floor(from.event.at / bar.beatTicks) + 1 + bar.firstBeat : 1 + bar.firstBeat
  const beats = Math.round(bar.length / bar.beatTicks)
  return {
    bar: bar.number,
    fromBeat,
    toBeat,
    wholeBar: toBeat - fromBeat + 1 >= beats,
    into: !sameBar,
    reason: {
      kind: 'change',
      from: from.shape?.name ?? null,
      to: to.shape?.name ?? null,
      fromFret: lowestFret(from.grip.presses),
      toFret: lowestFret(to.grip.presses),
      availableS: change.availableS,
      within: withinShape(change),
      tightest: false,
    },
  }
}

function withinShape({ from, to, fingers }: HandChange): WithinShape | null {
  if (to.shape === null || from.shape?.name !== to.shape.name) return null
  return from.event.target.shift === to.event.target.shift ? { kind: 'fingers', fingers } : { kind: 'moved' }
}

function lowestFret(presses: readonly { readonly fret: number }[]): number | null {
  return presses.length === 0 ? null : Math.min(...presses.map((press) => press.fret))
}

function keyOf(reason: LoopReason): string {
  switch (reason.kind) {
    case 'change':
      return `change ${reason.from} ${reason.to} ${reason.fromFret} ${reason.toFret} ${reason.within?.kind}`
    case 'stretch':
      return `stretch ${reason.fingers.join()} ${reason.frets.join()}`
    case 'technique':
      return reason.technique
    default:
      return reason.kind
  }
}
