import type { Touch } from '../play-data.ts'

/**
 * The loudest sample of a note by its touch, of 1; judgement. Six accented notes whose loudest samples fell together would, with the click, still stay
 * under 1: nothing is ever cut off.
 */
export const LEVEL: Readonly<Record<Touch, number>> = { struck: 0.125, legato: 0.09, muted: 0.11, damped: 0.1 }

/** What an accent and a ghost stroke make of a level. */
export const STRESS: Readonly<Record<-1 | 0 | 1, number>> = { [-1]: 0.5, 0: 1, 1: 1.15 }

/** The loudest sample of the click. */
export const CLICK_LEVEL = 0.13
