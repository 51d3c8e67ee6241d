import type { PlayBar } from './play-data.ts'

/** What is played: from a time of the part to another, once or round and round. */
export interface Stretch {
  readonly fromMs: number
  readonly toMs: number
  readonly round: boolean
}

/** The whole of a part, once. */
export function wholePart(bars: readonly PlayBar[]): Stretch {
  return { fromMs: 0, toMs: endOf(bars.at(-1)), round: false }
}

/**
 * From the first time that bar `from` is played to the end of the next time that `to` is, round and round: what lies between is played as the repeats
 * say. Bars in the wrong order are turned round; a bar that is never reached from there ends the stretch with the part.
 */
export function loopedBars(bars: readonly PlayBar[], from: number, to: number): Stretch {
  const [first, last] = [Math.min(from, to), Math.max(from, to)]
  const start = Math.max(
    0,
    bars.findIndex(([number]) => number === first),
  )
  const end = bars.findIndex(([number], index) => index >= start && number === last)
  return { fromMs: bars[start]?.[1] ?? 0, toMs: endOf(end === -1 ? bars.at(-1) : bars[end]), round: true }
}

function endOf(bar: PlayBar | undefined): number {
  return bar === undefined ? 0 : bar[1] + bar[2]
}
