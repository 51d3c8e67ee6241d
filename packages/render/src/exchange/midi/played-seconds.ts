import type { Bar, Ticks } from '@barwise/parser'
import type { PlayedBar } from './played-bars.ts'
import { placeAt } from './swung-notes.ts'

/** Seconds of a stretch of a bar at the bar's own tempo. */
export function secondsOf({ tempoBpm, beatTicks }: Bar, ticks: Ticks): number {
  return (60 * ticks) / (tempoBpm * beatTicks)
}

/**
 * When a moment of a part is heard, in seconds from its first sound, every bar at its own tempo. Takes ticks as played: repeats played out,
 * swing swung.
 *
 * @example two bars of 4/4 at 120 and 60 quarters a minute: 6720 -> 1, 13440 -> 2, 16800 -> 3
 */
export function playedSeconds(played: readonly PlayedBar[]): (at: Ticks) => number {
  const starts: number[] = []
  let seconds = 0
  for (const { bar } of played) {
    starts.push(seconds)
    seconds += secondsOf(bar, bar.length)
  }
  return (at) => {
    const place = placeAt(played, at)
    const now = played[place]
    return now === undefined ? 0 : (starts[place] ?? 0) + secondsOf(now.bar, at - now.start)
  }
}
