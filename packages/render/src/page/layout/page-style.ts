import type { Paper } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { type Edition, PUPIL } from '../edition.ts'

/** A size of text with its leading, in points. */
export interface TextSize {
  readonly size: number
  readonly leading: number
}

/** Paper, margins and sizes. Lengths in points. A few sizes of text, each with one job. */
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
  /** The widest line of prose: about 70 characters, fewer in large print. */
  readonly measure: number
  readonly title: TextSize
  readonly subtitle: TextSize
  readonly display: TextSize
  readonly body: TextSize
  readonly steps: TextSize
  /** What is read in sentences but is no prose: advice, plan, imprint. */
  readonly small: TextSize
  /** What is looked up, not read: folios, running heads, the key to the strip. */
  readonly label: TextSize
  /** Distance of two staff lines: in the play-through, and in cards. */
  readonly staffSpace: number
  readonly cardStaffSpace: number
  readonly rule: { readonly head: number; readonly section: number; readonly group: number; readonly gap: number }
  /** Large print: one column, nothing beside anything, no hyphens. */
  readonly large: boolean
  /** No text in music is set smaller; 0 leaves it to the staff space. */
  readonly minTextPt: number
  /** Size of chord grids against those of the pupil's edition. */
  readonly gridScale: number
  /** Whether string 1 stands at the left of chord grids. */
  readonly mirrored: boolean
  /** How much larger insets and the room between blocks are than in the pupil's edition. */
  readonly ease: number
}

const SIZES_MM: Readonly<Record<Paper, readonly [width: number, height: number, inner: number, outer: number]>> = {
  a4: [210, 297, 20, 16],
  letter: [215.9, 279.4, 20, 16],
  a5: [148, 210, 16, 12],
}

/** The style of a page on the paper asked for. Inner margins leave room for holes, outer ones for a thumb. */
export function pageStyle(paper: Paper, edition: Edition = PUPIL): PageStyle {
  const [width, height, inner, outer] = SIZES_MM[paper]
  const textWidth = pointsOf(width - inner - outer)
  return {
    width: pointsOf(width),
    height: pointsOf(height),
    inner: pointsOf(inner),
    outer: pointsOf(outer),
    textWidth,
    mirrored: edition.left,
    ...(edition.large ? largeSizes(paper, textWidth) : usualSizes(paper, textWidth)),
  }
}

type Sizes = Omit<PageStyle, 'width' | 'height' | 'inner' | 'outer' | 'textWidth' | 'mirrored'>

function usualSizes(paper: Paper, textWidth: number): Sizes {
  const narrow = paper === 'a5'
  return {
    top: pointsOf(14),
    bottom: pointsOf(12),
    headBase: pointsOf(11.2),
    measure: Math.min(textWidth, pointsOf(122)),
    title: narrow ? { size: 25, leading: 26 } : { size: 32, leading: 33 },
    subtitle: { size: 13.5, leading: 18 },
    display: { size: 13.5, leading: 17 },
    body: { size: 10.5, leading: 14 },
    steps: { size: 9.5, leading: 12.2 },
    small: { size: 8.5, leading: 10.7 },
    label: { size: 8.5, leading: 10.7 },
    staffSpace: pointsOf(narrow ? 1.5 : 1.55),
    cardStaffSpace: pointsOf(1.5),
    rule: { head: pointsOf(0.45), section: pointsOf(0.3), group: pointsOf(0.2), gap: pointsOf(1.4) },
    large: false,
    minTextPt: 0,
    gridScale: 1,
    ease: 1,
  }
}

/**
 * Large print: words of 18 pt and more, labels of 14 pt and more, lines of some 45 letters with wide leading. Sizes as advised for readers with
 * low vision (common practice: 18 pt is the least that is called large print).
 */
function largeSizes(paper: Paper, textWidth: number): Sizes {
  const narrow = paper === 'a5'
  return {
    top: pointsOf(17),
    bottom: pointsOf(11),
    headBase: pointsOf(12.5),
    measure: textWidth,
    title: narrow ? { size: 32, leading: 37 } : { size: 40, leading: 46 },
    subtitle: { size: 22, leading: 29 },
    display: { size: 26, leading: 33 },
    body: { size: 20, leading: 27.5 },
    steps: { size: 20, leading: 27.5 },
    small: { size: 18, leading: 24 },
    label: { size: 14, leading: 18 },
    staffSpace: pointsOf(2.5),
    cardStaffSpace: pointsOf(2.5),
    rule: { head: pointsOf(0.8), section: pointsOf(0.6), group: pointsOf(0.4), gap: pointsOf(2.4) },
    large: true,
    minTextPt: 14,
    gridScale: 1.75,
    ease: 1.8,
  }
}
