import type { Paper } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { type Edition, PUPIL } from '../edition.ts'

/** A size of text with its leading, in points. */
export interface TextSize {
  readonly size: number
  readonly leading: number
}

/** Paper, margins and sizes. Lengths in points. Five sizes of text, each with one job. */
export interface PageStyle {
  readonly width: number
  readonly height: number
  readonly inner: number
  readonly outer: number
  /** From the top edge to the text, and from the text's end to the bottom edge. */
  readonly top: number
  readonly bottom: number
  /** Base line of the running head. */
  readonly headBase: number
  readonly textWidth: number
  /** The widest line of prose: about 70 characters. */
  readonly measure: number
  readonly title: TextSize
  readonly display: TextSize
  readonly body: TextSize
  readonly steps: TextSize
  readonly small: TextSize
  /** Distance of two staff lines: in the play-through, and in cards. */
  readonly staffSpace: number
  readonly cardStaffSpace: number
  readonly rule: { readonly head: number; readonly section: number; readonly group: number; readonly gap: number }
}

const SIZES_MM: Readonly<Record<Paper, readonly [width: number, height: number, inner: number, outer: number]>> = {
  a4: [210, 297, 20, 16],
  letter: [215.9, 279.4, 20, 16],
  a5: [148, 210, 16, 12],
}

/** The style of a page on the paper asked for. Inner margins leave room for holes, outer ones for a thumb. */
export function pageStyle(paper: Paper, _edition: Edition = PUPIL): PageStyle {
  const [width, height, inner, outer] = SIZES_MM[paper]
  const small = paper === 'a5'
  const textWidth = pointsOf(width - inner - outer)
  return {
    width: pointsOf(width),
    height: pointsOf(height),
    inner: pointsOf(inner),
    outer: pointsOf(outer),
    top: pointsOf(14),
    bottom: pointsOf(12),
    headBase: pointsOf(11.2),
    textWidth,
    measure: Math.min(textWidth, pointsOf(122)),
    title: small ? { size: 25, leading: 26 } : { size: 32, leading: 33 },
    display: { size: 13.5, leading: 17 },
    body: { size: 10.5, leading: 14 },
    steps: { size: 9.5, leading: 12.2 },
    small: { size: 8.5, leading: 10.7 },
    staffSpace: pointsOf(small ? 1.5 : 1.55),
    cardStaffSpace: pointsOf(1.5),
    rule: { head: pointsOf(0.45), section: pointsOf(0.3), group: pointsOf(0.2), gap: pointsOf(1.4) },
  }
}
