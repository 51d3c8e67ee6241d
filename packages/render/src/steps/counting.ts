import type { Bar, Feel, Metre, StrokeStyle, Ticks } from '@barwise/parser'
import { beatAt } from './count-name.ts'

/** How a bar is counted: what a reader must know before its first count. */
export interface Counting {
  readonly metre: Metre
  readonly beats: { readonly from: number; readonly to: number }
  /** Places to count in a beat: the slots of the hand, or the parts into which every beat is cut. */
  readonly slots: number
  /** The cut that every beat has, null when there is none. */
  readonly cut: number | null
  readonly stroke: StrokeStyle
  /** Whether the hand swings in whole quarters, so that every stroke on the grid goes down. */
  readonly inQuarters: boolean
  readonly feel: Feel
}

/** Three bars of four must be cut alike for a part to be counted so: then only the odd bar says its own count. */
const NEARLY_ALL = 0.75

/** How a part is counted: as its first bar, cut as nearly all its bars are. */
export function headCounting(bars: readonly Bar[]): Counting {
  const first = bars[0]
  if (first === undefined) {
    return {
      metre: { count: 4, unit: 4 },
      beats: { from: 1, to: 4 },
      slots: 4,
      cut: null,
      stroke: 'alternate',
      inQuarters: false,
      feel: 'straight',
    }
  }
  const cuts = bars.map((bar) => commonCut(bar, { fromTicks: 0, toTicks: bar.length }, null))
  const cut = cuts[0] ?? null
  const alike = cuts.filter((one) => one === cut).length
  return countingOf(first, bars.length > 1 && alike >= NEARLY_ALL * bars.length ? cut : null)
}

/** How a bar is counted whose told beats are all cut into `cut` parts, or none where that is null. */
export function countingOf(bar: Bar, cut: number | null): Counting {
  const slotTicks = (4 * 3360) / bar.grid
  return {
    metre: bar.metre,
    beats: { from: 1, to: beatAt(bar, bar.length - 1) },
    slots: cut ?? bar.beatTicks / slotTicks,
    cut,
    stroke: bar.stroke,
    inQuarters: bar.grid === 4,
    feel: bar.feel,
  }
}

/** Whether two bars have the same counts, whatever strikes them. */
export function sameCount(a: Counting, b: Counting): boolean {
  return (
    a.metre.count === b.metre.count &&
    a.metre.unit === b.metre.unit &&
    a.slots === b.slots &&
    a.cut === b.cut &&
    a.beats.to === b.beats.to
  )
}

/** Whether what is struck goes the same way in two bars by the way of striking alone. */
export function sameStroke(a: Counting, b: Counting): boolean {
  return a.stroke === b.stroke && (a.stroke !== 'alternate' || a.inQuarters === b.inQuarters)
}

/**
 * The number of parts when every beat of a stretch is cut alike, those of other ways to play it too; null otherwise. One beat
 * alone counts as such only where the whole part is cut so (`usual`).
 */
export function commonCut(
  bar: Bar,
  { fromTicks, toTicks }: { readonly fromTicks: Ticks; readonly toTicks: Ticks },
  usual: number | null,
): number | null {
  const beats = Math.ceil((toTicks - fromTicks) / bar.beatTicks)
  const cuts = bar.groups.filter((group) => group.at >= fromTicks && group.at < toTicks)
  const parts = cuts[0]?.parts
  if (parts === undefined || beats < (parts === usual ? 1 : 2)) return null
  const wholly = (groups: Bar['groups'], of: number): boolean =>
    groups.length === of &&
    groups.every((cut) => cut.parts === parts && cut.length === bar.beatTicks && cut.at % bar.beatTicks === 0)
  const others = bar.alternatives.every(({ groups, length }) => wholly(groups, Math.ceil(length / bar.beatTicks)))
  return wholly(cuts, beats) && others ? parts : null
}
