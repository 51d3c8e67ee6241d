import { pointsOf } from '../drawing/lengths.ts'

/** The measures of the strip in points. */
export interface StripStyle {
  /** Width of a slot's cell, and the room between beats. */
  readonly cell: number
  readonly beatGap: number
  /** Share of its cell that a block fills. */
  readonly blockShare: number
  readonly blockHeight: number
  /** Size of the numbers of the count; `e & a` are a little smaller. */
  readonly count: number
  readonly stroke: number
  readonly word: number
  readonly hair: number
  readonly floor: number
  /** Room over the count when it stands under a tab. */
  readonly lead: number
  /** No text smaller than this. */
  readonly leastText: number
}

/** For cards on paper: cells of 5 mm. Judged by eye at arm's length. */
const PAPER: StripStyle = {
  cell: pointsOf(5),
  beatGap: pointsOf(1.4),
  blockShare: 0.82,
  blockHeight: pointsOf(5.9),
  count: pointsOf(3.5),
  stroke: pointsOf(2.9),
  word: pointsOf(2.65),
  hair: pointsOf(0.25),
  floor: pointsOf(0.22),
  lead: pointsOf(1.35),
  leastText: 5,
}

/** For large print: nothing in it is smaller than 14 pt. */
const LARGE: StripStyle = {
  cell: pointsOf(9.12),
  beatGap: pointsOf(2.4),
  blockShare: 0.94,
  blockHeight: pointsOf(10.5),
  count: pointsOf(5.75),
  stroke: pointsOf(5),
  word: 14,
  hair: pointsOf(0.4),
  floor: pointsOf(0.35),
  lead: pointsOf(2),
  leastText: 14,
}

/** The style for a least size of text in points: that of large print from 12 pt on. */
export function stripStyle(minTextPt = 0): StripStyle {
  return minTextPt >= 12 ? LARGE : PAPER
}
