import { pointsOf } from '../../drawing/lengths.ts'
import { type Edition, PUPIL } from '../../page/edition.ts'

/** How music is drawn for one width of window. Lengths in points of the drawing; the style sheet fits the column to the window. */
export interface FigureMeasures {
  /** Width of a line of systems, and distance of its staff lines. */
  readonly systemsPt: number
  readonly staffSpacePt: number
  /** The least width that fills the column with a card's figure: figures of a part are of one scale, and short bars are not blown up. */
  readonly cardsPt: number
  /** A card's figure is cut at a beat when it is wider than this. */
  readonly cardWholePt: number
}

/** How music is drawn for the screen: for a wide column, and anew for a phone. */
export interface ScreenMeasures {
  readonly wide: FigureMeasures
  readonly narrow: FigureMeasures
  /** Distance of two staff lines in cards and on empty staves. */
  readonly cardStaffSpacePt: number
  readonly blankStaffSpacePt: number
  /** Cells of a card's figure are widened for what is crowded no further than makes it so wide: one bar must not make all others small. */
  readonly cardGrownPt: number
  /** The least size of text in music; 0 leaves it to the staff space. */
  readonly minTextPt: number
  /** Up to this share of the column, in percent, a card's figure has its words beside it; 0 sets them always under it. */
  readonly besidePercent: number
  /** Whether string 1 stands at the left of chord grids. */
  readonly mirrored: boolean
}

/** The measures of an edition. Judged by eye: in large print the least sign in music is about as large as its words. */
export function screenMeasures({ large, left }: Pick<Edition, 'large' | 'left'> = PUPIL): ScreenMeasures {
  return { ...(large ? LARGE : USUAL), mirrored: left }
}

const USUAL: Omit<ScreenMeasures, 'mirrored'> = {
  wide: {
    systemsPt: pointsOf(174),
    staffSpacePt: pointsOf(1.6),
    cardsPt: pointsOf(95),
    cardWholePt: Infinity,
  },
  narrow: {
    systemsPt: pointsOf(96),
    staffSpacePt: pointsOf(1.7),
    cardsPt: pointsOf(50),
    cardWholePt: pointsOf(68),
  },
  cardStaffSpacePt: pointsOf(1.5),
  blankStaffSpacePt: pointsOf(1.75),
  cardGrownPt: pointsOf(115),
  minTextPt: 0,
  besidePercent: 60,
}

const LARGE: Omit<ScreenMeasures, 'mirrored'> = {
  wide: {
    systemsPt: pointsOf(174),
    staffSpacePt: pointsOf(2.5),
    cardsPt: pointsOf(174),
    cardWholePt: pointsOf(174),
  },
  narrow: {
    systemsPt: pointsOf(90),
    staffSpacePt: pointsOf(2.5),
    cardsPt: pointsOf(84),
    cardWholePt: pointsOf(84),
  },
  cardStaffSpacePt: pointsOf(2.5),
  blankStaffSpacePt: pointsOf(2.75),
  cardGrownPt: pointsOf(174),
  minTextPt: 14,
  besidePercent: 0,
}
