import type { Bar, Ticks } from '@barwise/parser'

/** What is counted at a tick: the words, and whether a beat starts there. */
export interface CountLabel {
  readonly text: string
  readonly beat: boolean
}

/**
 * The count at a tick of a bar, null where nothing is said: numbers on the beats, `e & a` on sixteenths, `& a` on the thirds of a
 * triplet or a dotted beat. `countLabel(bar, 2520)` of a 4/4 bar is `a`. Common practice.
 */
export function countLabel(bar: Bar, at: Ticks): CountLabel | null {
  const beat = Math.floor(at / bar.beatTicks)
  const offset = at - beat * bar.beatTicks
  if (offset === 0) return { text: String(bar.firstBeat + beat + 1), beat: true }
  const group = bar.groups.find((candidate) => candidate.at <= at && at < candidate.at + candidate.length)
  const part = offset / bar.beatTicks
  const triplet = group !== undefined && group.parts % 3 === 0 && (group.length / group.parts) * 3 === bar.beatTicks
  const dotted = bar.beatTicks % 5040 === 0
  if (triplet || dotted) {
    if (Math.abs(part - 1 / 3) < 1e-9) return { text: '&', beat: false }
    if (Math.abs(part - 2 / 3) < 1e-9) return { text: 'a', beat: false }
    return null
  }
  if (group !== undefined && group.parts % 2 === 1) return null
  if (part === 0.5) return { text: '&', beat: false }
  if (bar.beatTicks < 3360) return null
  if (part === 0.25) return { text: 'e', beat: false }
  if (part === 0.75) return { text: 'a', beat: false }
  return null
}
