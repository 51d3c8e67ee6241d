import type { InstrumentName } from '../score/instrument.ts'
import type { PartView } from '../score/part.ts'
import type { Feel, Grid, Metre } from '../score/time.ts'
import { slotTicks, TICKS_PER_QUARTER } from '../score/time.ts'

/** A whole number within bounds (both included), null otherwise. */
export function parseWhole(text: string, low: number, high: number): number | null {
  const number = /^\d{1,6}$/.test(text) ? Number(text) : Number.NaN
  return number >= low && number <= high ? number : null
}

/** A time signature of the language: 1-16 over 2, 4, 8 or 16. */
export function parseMetre(text: string): Metre | null {
  const match = /^(\d{1,2})\/(2|4|8|16)$/.exec(text)
  const count = Number(match?.[1])
  if (match === null || count < 1 || count > 16) return null
  return { count, unit: Number(match[2]) as Metre['unit'] }
}

/** One of the given words, null otherwise. */
export function parseWord<Word extends string>(text: string, words: readonly Word[]): Word | null {
  return words.find((word) => word === text) ?? null
}

export const FEELS: readonly Feel[] = ['straight', 'swing 8', 'swing 16']
export const STROKE_STYLES = ['alternate', 'down', 'pluck'] as const
export const TOUCHES = ['light', 'full'] as const
export const HANDS = ['adult', 'small'] as const
export const STRING_NAMINGS = ['names', 'numbers'] as const
export const INSTRUMENT_NAMES: readonly InstrumentName[] = ['guitar', 'bass', 'ukulele']
const VIEWS: readonly PartView[] = ['sheet', 'cards', 'plan']

/** `grid=16` and the like. */
export function parseGrid(text: string): Grid | null {
  const number = Number(text)
  return /^\d{1,2}$/.test(text) && (number === 4 || number === 8 || number === 16 || number === 32) ? number : null
}

/** The views of `show`, in the order a part prints them; none for `none`. */
export function parseViews(text: string): readonly PartView[] | null {
  if (text === 'none') return []
  const words = text.split(/[\s,]+/).filter((word) => word !== '')
  const known = words.every((word) => VIEWS.some((view) => view === word))
  return words.length > 0 && known ? VIEWS.filter((view) => words.includes(view)) : null
}

/** Whether so many beats can be counted in a bar of this time: its own number, or a third of it (dotted beats). */
export function countFits(count: number, metre: Metre): boolean {
  return count === metre.count || count * 3 === metre.count
}

/** Ticks of one counted beat: the unit of the metre, or the dotted value that `count` makes of three of them. */
export function beatTicksOf(metre: Metre, count: number | null): number {
  const unit = (4 * TICKS_PER_QUARTER) / metre.unit
  return count !== null && count !== metre.count && countFits(count, metre) ? unit * 3 : unit
}

/** Whether a beat of so many ticks can be cut into the slots of a grid. */
export function gridFits(grid: Grid, beatTicks: number): boolean {
  return beatTicks % slotTicks(grid) === 0
}
