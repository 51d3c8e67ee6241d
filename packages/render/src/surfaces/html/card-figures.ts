import type { Part, Ticks } from '@barwise/parser'
import type { Element } from 'hast'
import { pointsOf } from '../../drawing/lengths.ts'
import type { StepCard } from '../../steps/index.ts'
import { type CardFigure, drawCardFigure } from '../../strip/card-figure.ts'
import { middleBeat } from '../../strip/middle-beat.ts'
import { fitted } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** The figures of cards: one each for a wide column; on a phone a full bar is cut in two at its middle beat. */
export interface CardFigures {
  readonly wide: readonly (readonly CardFigure[])[]
  readonly narrow: readonly (readonly CardFigure[])[]
  /** The width in points that fills the column, wide and narrow. */
  readonly columnPt: { readonly wide: number; readonly narrow: number }
}

/** The least widths that fill the column: figures of a part are of one scale, and short bars are not blown up. */
const COLUMN_PT = { wide: pointsOf(95), narrow: pointsOf(50) }
/** A figure up to this width stays whole on a phone. */
const WHOLE_PT = pointsOf(64)

/** Draws the figures of all cards, each wide one in one piece, each narrow one in one or two. */
export function cardFigures(part: Part, cards: readonly StepCard[], context: PageContext): CardFigures {
  const draw = (card: StepCard, fromTicks: Ticks, toTicks: Ticks): CardFigure => {
    const figure = drawCardFigure({
      lesson: context.lesson,
      part,
      fonts: context.fonts,
      bar: card.bar,
      fromTicks,
      toTicks,
    })
    context.drawings.push(figure.drawing)
    return figure
  }
  const wide = cards.map((card) => [draw(card, card.fromTicks, card.toTicks)])
  const narrow = cards.map((card, index) => {
    const whole = wide[index] ?? []
    const bar = part.bars.find((one) => one.number === card.bar)
    const cut = bar === undefined ? null : middleBeat(bar, card)
    if (cut === null || (whole[0]?.drawing.width ?? 0) <= WHOLE_PT) return whole
    return [draw(card, card.fromTicks, cut), draw(card, cut, card.toTicks)]
  })
  const widest = (all: CardFigures['wide'], least: number): number =>
    Math.max(least, ...all.flat().map(({ drawing }) => drawing.width))
  const columnPt = { wide: widest(wide, COLUMN_PT.wide), narrow: widest(narrow, COLUMN_PT.narrow) }
  return { wide, narrow, columnPt }
}

/** A card's figures as nodes, all of one scale; the style sheet shows those that fit the window. */
export function figureNodes(card: StepCard, index: number, figures: CardFigures, context: PageContext): Element {
  const label = context.web.cardFigure(card.title)
  const node = (figure: CardFigure, columnPt: number, name: string): Element =>
    fitted(drawingNode(figure.drawing, name, context.fonts), figure.drawing, columnPt)
  const halves = (figures.narrow[index] ?? []).map((figure, half) =>
    node(figure, figures.columnPt.narrow, half === 0 ? label : context.web.continued(label)),
  )
  const whole = (figures.wide[index] ?? []).map((figure) => node(figure, figures.columnPt.wide, label))
  return el('figure', '', [el('div', 'wide', whole), el('div', 'narrow', halves)])
}
