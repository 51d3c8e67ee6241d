import { type CardFigure, type DrawCardFigureInput, drawCardFigure } from './card-figure.ts'
import { cutToFit } from './middle-beat.ts'

/** A figure a little wider than its page is drawn with narrower cells; one wider than this share is cut. */
const SQUEEZED = 1.08

/**
 * The figure of a card in as few pieces as its page holds without making it smaller, each whole but the last ending before a beat. A stretch
 * without a beat inside is set smaller, as `drawCardFigure` does. Throws when the part has no such bar (our bug: references are checked).
 */
export function drawFigurePieces(input: DrawCardFigureInput & { readonly pageWidthPt: number }): readonly CardFigure[] {
  const { pageWidthPt, fromTicks, toTicks, ...given } = input
  const free = { maxWidthPt: pageWidthPt, ...given }
  const bar = input.part.bars.find((candidate) => candidate.number === input.bar)
  if (bar === undefined) throw new Error(`part ${input.part.id} has no bar ${input.bar}`)
  const pieces = cutToFit(
    bar,
    { fromTicks, toTicks },
    (stretch) => drawCardFigure({ ...free, ...stretch }).drawing.width <= pageWidthPt * SQUEEZED,
  )
  return pieces.map((stretch) => drawCardFigure({ ...free, ...stretch, pageWidthPt }))
}
