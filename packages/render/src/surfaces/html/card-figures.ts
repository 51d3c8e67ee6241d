import type { Part } from '@barwise/parser'
import type { Element } from 'hast'
import type { StepCard } from '../../steps/index.ts'
import { type CardFigure, drawCardFigure } from '../../strip/card-figure.ts'
import { type BarStretch, cutToFit } from '../../strip/middle-beat.ts'
import { fitted, shareOf } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** The figures of one width of window: for each card one, or several where it is cut at beats; all of one scale. */
export interface CardFigures {
  readonly figures: readonly (readonly CardFigure[])[]
  /** The width in points that fills the column. */
  readonly columnPt: number
}

/** The figures of cards, for a wide column and for a phone. */
export interface CardFigureSets {
  readonly wide: CardFigures
  readonly narrow: CardFigures
}

/** Draws the figures of all cards; what is drawn alike for both widths is drawn once. */
export function cardFigures(part: Part, cards: readonly StepCard[], context: PageContext): CardFigureSets {
  const drawn = cards.map((card) => figuresOfBar(part, card.bar, context))
  return {
    wide: figuresFor('wide', { part, cards, drawn }, context),
    narrow: figuresFor('narrow', { part, cards, drawn }, context),
  }
}

/** Draws a stretch of a bar, once. `widestPt` bounds it in large print, whose cells are too wide for every window. */
type DrawStretch = (stretch: BarStretch, widestPt: number) => CardFigure

function figuresOfBar(part: Part, bar: number, { lesson, fonts, screen }: PageContext): DrawStretch {
  const known = new Map<string, CardFigure>()
  const large = screen.minTextPt > 0
  return ({ fromTicks, toTicks }, widestPt) => {
    const key = `${fromTicks} ${toTicks}${large ? ` ${widestPt}` : ''}`
    const figure =
      known.get(key) ??
      drawCardFigure({
        lesson,
        part,
        fonts,
        bar,
        fromTicks,
        toTicks,
        staffSpacePt: screen.cardStaffSpacePt,
        minTextPt: screen.minTextPt,
        maxWidthPt: screen.cardGrownPt,
        ...(large ? { pageWidthPt: widestPt } : {}),
      })
    known.set(key, figure)
    return figure
  }
}

interface Cards {
  readonly part: Part
  readonly cards: readonly StepCard[]
  readonly drawn: readonly DrawStretch[]
}

function figuresFor(window: 'wide' | 'narrow', { part, cards, drawn }: Cards, context: PageContext): CardFigures {
  const { cardsPt, cardWholePt } = context.screen[window]
  const figures = cards.map(({ bar: number, fromTicks, toTicks }, index): readonly CardFigure[] => {
    const draw = drawn[index]
    const bar = part.bars.find((one) => one.number === number)
    if (draw === undefined || bar === undefined) return []
    const fits = (stretch: BarStretch): boolean => {
      const { drawing, scale } = draw(stretch, cardWholePt)
      return scale === 1 && drawing.width <= cardWholePt
    }
    return cutToFit(bar, { fromTicks, toTicks }, fits).map((stretch) => draw(stretch, cardWholePt))
  })
  const all = figures.flat().map(({ drawing }) => drawing)
  context.drawings.push(...all)
  return { figures, columnPt: Math.max(cardsPt, ...all.map(({ width }) => width)) }
}

/** The share of the column that a card's figure takes, in percent, when its words are to stand beside it; null when they stand under it. */
export function besideShare(index: number, { wide }: CardFigureSets, { screen }: PageContext): number | null {
  const figures = wide.figures[index] ?? []
  const [figure] = figures
  if (figure === undefined || figures.length > 1) return null
  const share = shareOf(figure.drawing, wide.columnPt)
  return share <= screen.besidePercent ? share : null
}

/** A card's figures as nodes, all of one scale; the style sheet shows those that fit the window. */
export function figureNodes(card: StepCard, index: number, sets: CardFigureSets, context: PageContext): Element {
  const label = context.web.cardFigure(card.title)
  const nodes = ({ figures, columnPt }: CardFigures): readonly Element[] =>
    (figures[index] ?? []).map(({ drawing }, piece) => {
      const name = piece === 0 ? label : context.web.continued(label)
      return fitted(drawingNode(drawing, name, context.fonts), drawing, columnPt)
    })
  return el('figure', '', [el('div', 'wide', nodes(sets.wide)), el('div', 'narrow', nodes(sets.narrow))])
}
