import type { Finger } from '../score/shape.ts'
import type { Fingering, Grip, Press } from './grip.ts'

/**
 * Every fingering of a grip that a hand could form, distances left aside: fingers follow the frets; on one fret the higher
 * finger takes the thinner string; a finger presses one fret; a finger on several strings covers no string between them
 * that must sound open or at a lower fret. Fixed fingers are kept; the thumb presses only where it is fixed.
 * Returns an empty list when there is none (more than four fingers needed, or fixed fingers that rule each other out).
 *
 * @example a grip of fret 1 on strings 2 and 1 has six: 1-1, 1-2, 1-3, ... 3-4 and 2-2, 3-3, 4-4 among them
 */
export function feasibleFingerings(grip: Grip): readonly Fingering[] {
  const found: Fingering[] = []
  const chosen: Finger[] = []
  const place = (at: number, last: 0 | 1 | 2 | 3 | 4): void => {
    const press = grip.presses[at]
    if (press === undefined) {
      if (coversNothing(grip, chosen)) found.push([...chosen])
      return
    }
    for (const finger of candidates(press, last, grip, chosen)) {
      chosen.push(finger)
      place(at + 1, finger === 'T' ? last : finger)
      chosen.pop()
    }
  }
  place(0, 0)
  return found
}

/** The fingers that may take a press after the finger `last` has taken the one before in order. */
function candidates(press: Press, last: 0 | 1 | 2 | 3 | 4, grip: Grip, chosen: readonly Finger[]): readonly Finger[] {
  if (press.finger === 'T') return ['T']
  const sameFret = lastFretOf(last, grip, chosen) === press.fret
  const from = last === 0 ? 1 : sameFret ? last : last + 1
  const all = ([1, 2, 3, 4] as const).filter((finger) => finger >= from)
  return press.finger === null ? all : all.filter((finger) => finger === press.finger)
}

function lastFretOf(finger: 0 | 1 | 2 | 3 | 4, grip: Grip, chosen: readonly Finger[]): number | null {
  const at = chosen.lastIndexOf(finger as Finger)
  return at < 0 ? null : (grip.presses[at]?.fret ?? null)
}

/** Whether no finger on several strings lies over a string that must sound open or at a lower fret. */
export function coversNothing(grip: Grip, fingering: Fingering): boolean {
  return coveredString(grip, fingering) === null
}

/** A string that a barre would stop although it must sound open or lower, with that finger; null when there is none. */
export function coveredString(
  grip: Grip,
  fingering: Fingering,
): { readonly finger: Finger; readonly fret: number; readonly string: number } | null {
  for (const finger of new Set(fingering)) {
    const pressed = grip.presses.filter((_, at) => fingering[at] === finger)
    const fret = Math.max(...pressed.map((press) => press.fret))
    const strings = pressed.filter((press) => press.fret === fret).map((press) => press.string)
    const high = Math.max(...strings)
    const low = Math.min(...strings)
    if (high === low) continue
    const inside = (string: number): boolean => string > low && string < high
    const open = grip.open.find(inside)
    if (open !== undefined) return { finger, fret, string: open }
    const lower = grip.presses.find((press) => press.fret < fret && inside(press.string))
    if (lower !== undefined) return { finger, fret, string: lower.string }
  }
  return null
}
