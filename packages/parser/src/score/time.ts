/** Ticks in a quarter note. Divides by 1-8, 10, 12, 14, 15 and 16, so every cut the language allows is exact. */
export const TICKS_PER_QUARTER = 3360

/** Musical time, always a whole number of ticks. */
export type Ticks = number

/** A time signature: `count` notes of the value 1/`unit`. */
export interface Metre {
  readonly count: number
  readonly unit: 2 | 4 | 8 | 16
}

/** The speed of the strumming hand: two slots are one swing. */
export type Grid = 4 | 8 | 16 | 32

export type Feel = 'straight' | 'swing 8' | 'swing 16'

/** The ticks of a whole bar, as in `barTicks({ count: 6, unit: 8 })` = 10080. */
export function barTicks(metre: Metre): Ticks {
  return (metre.count * 4 * TICKS_PER_QUARTER) / metre.unit
}

/** The ticks of one slot of a grid, as in `slotTicks(16)` = 840. */
export function slotTicks(grid: Grid): Ticks {
  return (4 * TICKS_PER_QUARTER) / grid
}
