/** Points in a millimetre: 72 to the inch of 25.4. */
export const POINTS_PER_MM: number = 72 / 25.4

/** Millimetres as points, as in `pointsOf(25.4)` = 72. */
export function pointsOf(mm: number): number {
  return mm * POINTS_PER_MM
}
