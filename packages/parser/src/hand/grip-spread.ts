import type { Grip } from './grip.ts'
import { type Neck, travelMm } from './neck.ts'

/**
 * How far a grip spreads the hand: millimetres between its two most distant fingertips, along and across the strings.
 *
 * @example an open G7 (3 2 0 0 0 1) spreads about 77 mm, an open E about 38
 */
export function gripSpreadMm(neck: Neck, grip: Grip): number {
  let widest = 0
  for (const a of grip.presses) {
    for (const b of grip.presses) widest = Math.max(widest, travelMm(neck, a, b))
  }
  return widest
}
