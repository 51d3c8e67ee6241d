import type { Cue } from './cues.ts'
import type { Stretch } from './stretch.ts'

/** A cue at its time on the clock. */
export interface TimedCue {
  readonly cue: Cue
  /** Seconds on the clock. */
  readonly atS: number
  /** Seconds to the end of the stretch, where everything stops sounding. */
  readonly leftS: number
  /** Seconds on the clock for each millisecond of the part. */
  readonly secondsPerMs: number
}

/** Where a part is while it plays, told by a clock that is handed in: no timers, no sound. */
export interface Transport {
  /** What comes before a time of the clock and was not told yet, in order. */
  until(clockS: number): readonly TimedCue[]
  /** Plays on at another tempo, from where was told up to. */
  setPercent(percent: number): void
  /** Plays another stretch: goes on where it is when that lies inside, else jumps to its beginning. Returns whether it jumped. */
  setStretch(stretch: Stretch): boolean
  /** When the last sound of a stretch that is played once has ended; null while it goes on. */
  endS(): number | null
}

export interface TransportInput {
  /** In order of time. */
  readonly cues: readonly Cue[]
  /** What comes before the stretch, in order of time; may be empty. */
  readonly leadIn: readonly Cue[]
  readonly stretch: Stretch
  /** Of the part's own tempo. */
  readonly percent: number
  /** The time of the clock at which it begins. */
  readonly startS: number
}

/** A stretch shorter than this is not played round and round: it holds no bar. */
const SHORTEST_MS = 10

/** Begins to play. */
export function startTransport(input: TransportInput): Transport {
  const { cues, leadIn } = input
  let { stretch } = input
  let secondsPerMs = perMs(input.percent)
  let cursorMs = leadIn[0]?.atMs ?? stretch.fromMs
  let anchor = { ms: cursorMs, clockS: input.startS }
  let endS: number | null = null
  const clockAt = (ms: number): number => anchor.clockS + (ms - anchor.ms) * secondsPerMs
  const anchorHere = (clockS: number, ms: number): void => {
    anchor = { ms, clockS }
    cursorMs = ms
  }
  const timed = (cue: Cue): TimedCue => {
    return { cue, atS: clockAt(cue.atMs), leftS: (stretch.toMs - cue.atMs) * secondsPerMs, secondsPerMs }
  }
  return {
    until(clockS) {
      const told: TimedCue[] = []
      while (endS === null && clockAt(cursorMs) < clockS) {
        const horizonMs = Math.min(stretch.toMs, anchor.ms + (clockS - anchor.clockS) / secondsPerMs)
        if (cursorMs < stretch.fromMs) told.push(...between(leadIn, cursorMs, horizonMs).map(timed))
        told.push(...between(cues, Math.max(cursorMs, stretch.fromMs), horizonMs).map(timed))
        const turned = horizonMs >= stretch.toMs
        if (!turned) cursorMs = horizonMs
        else if (stretch.round && stretch.toMs - stretch.fromMs >= SHORTEST_MS)
          anchorHere(clockAt(stretch.toMs), stretch.fromMs)
        else endS = clockAt(stretch.toMs)
        if (!turned) break
      }
      return told
    },
    setPercent(percent) {
      anchorHere(clockAt(cursorMs), cursorMs)
      secondsPerMs = perMs(percent)
    },
    setStretch(next) {
      const counting = cursorMs < stretch.fromMs && next.fromMs === stretch.fromMs
      const inside = counting || (cursorMs >= next.fromMs && cursorMs < next.toMs)
      stretch = next
      if (!inside) anchorHere(clockAt(cursorMs), next.fromMs)
      return !inside
    },
    endS: () => endS,
  }
}

function perMs(percent: number): number {
  return 0.1 / percent
}

function between(cues: readonly Cue[], fromMs: number, toMs: number): readonly Cue[] {
  const first = firstFrom(cues, fromMs)
  const last = firstFrom(cues, toMs)
  return cues.slice(first, last)
}

/** The place of the first cue that is not before a time. */
function firstFrom(cues: readonly Cue[], atMs: number): number {
  let [low, high] = [0, cues.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((cues[middle]?.atMs ?? 0) < atMs) low = middle + 1
    else high = middle
  }
  return low
}
