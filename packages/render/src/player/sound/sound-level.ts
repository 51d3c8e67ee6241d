import type { Touch } from '../play-data.ts'

/**
 * The loudest sample of a note by its touch, of 1; judgement. Damped strings sound together as one brush. Six accented strings whose loudest samples fell
 * together would, with the click, still stay under 1: nothing is ever cut off.
 */
export const LEVEL: Readonly<Record<Touch, number>> = { struck: 0.125, legato: 0.09, muted: 0.11, damped: 0.19 }

/** What an accent and a ghost stroke make of a level. */
export const STRESS: Readonly<Record<-1 | 0 | 1, number>> = { [-1]: 0.5, 0: 1, 1: 1.15 }

/** The share of a whole brush that some damped strings give. */
export function brushShare(strings: number): number {
  return 0.55 + 0.45 * Math.min(1, strings / 4)
}

/** The loudest sample of the click. */
export const CLICK_LEVEL = 0.13
