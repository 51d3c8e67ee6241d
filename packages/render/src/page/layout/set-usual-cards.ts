import { showsWholeBar } from '../../steps/cards.ts'
import { type CardFigure, drawCardFigure } from '../../strip/card-figure.ts'
import { signsInUse } from '../../strip/legend.ts'
import type { StripCell } from '../../strip/strip-cells.ts'
import { barAnchor } from '../document/anchors.ts'
import type { CardSection } from './card-section.ts'
import { groupRule } from './group-rule.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, stackRows } from './row.ts'
import { type CardContent, type CardStyle, cardStyle, fitCards, halfWidth, setCard, setHalfCard } from './set-card.ts'
import { setColumns } from './set-columns.ts'
import { setLegend } from './set-legend.ts'
import { setSection } from './set-section.ts'
import { setOpeningWords } from './set-steps.ts'
import { lineItem } from './set-text.ts'
import { say } from './text-run.ts'

/** A figure wider than its column by no more than this share is drawn with narrower cells, so that its steps stand beside it. */
const SQUEEZED = 1.08

/** How many times too narrow cells may be and still show all that is in them: a little less white between signs. */
const CROWDED = 1.1

/**
 * Cards with music at the left and steps at the right, or in two columns where all of them are short, under a head with the key to the strip.
 *
 * @param setTail what follows the last card, in the room it is given: in columns it ends the last of them.
 */
export function setUsualCards(
  section: CardSection,
  setTail: (area: Area) => readonly Row[],
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { title, part, steps, cards } = section
  const style = cardStyle(area)
  const figures = cards.map((card) => {
    const column = showsWholeBar(card) ? style.musicWidth : style.musicWidth - style.thenLeast
    const draw = (pageWidthPt: number, maxWidthPt: number): CardFigure =>
      drawCardFigure({
        lesson: context.lesson,
        part,
        fonts: context.fonts,
        bar: card.bar,
        fromTicks: card.fromTicks,
        toTicks: card.toTicks,
        staffSpacePt: context.style.cardStaffSpace,
        pageWidthPt,
        maxWidthPt,
      })
    const figure = draw(area.width, column)
    // What would run into each other in the column takes the width of the page, its steps under it.
    if (figure.crowded > CROWDED) return draw(area.width, area.width)
    const over = figure.drawing.width / column
    return !style.stacked && over > 1 && over <= SQUEEZED ? draw(column, column) : figure
  })
  const widths = figures.map(({ drawing }, index) => {
    const card = cards[index]
    return { width: drawing.width, told: card === undefined || showsWholeBar(card) ? 'whole' : 'by another' } as const
  })
  const fitted = fitCards(style, widths, area)
  const cells = figures.flatMap((figure): readonly StripCell[] => figure.cells)
  const name = lineItem([say(title, 'sans-bold', context.style.body.size)], { x: 0, y: 0 }, null, context)
  const legend = setLegend(signsInUse(cells), name.width, area, context)
  const head = setSection({ title, anchor: null, tempo: null, about: '', right: legend.beside }, area, context)
  const contents = cards.flatMap((card, index): readonly CardContent[] => {
    const figure = figures[index]
    if (figure === undefined) return []
    const notes = section.notes.filter((note) => note.card === card.bar)
    return [{ card, figure, steps, anchor: barAnchor(context.lessonId, part, card.bar), notes }]
  })
  const short = !style.stacked && cards.length > 1 && figures.every(({ drawing }) => drawing.width <= halfWidth(area))
  const top = [head, ...legend.below, ...setOpeningWords(section.opening, area, context)]
  if (!short) return [...top, ...setGroups(contents, fitted, area, context), ...setTail(area)]
  const halves = contents.map((content) => setHalfCard(content, area, context))
  const tail = setTail({ ...area, width: halfWidth(area) })
  return [...top, setColumns(endedBy(halves, tail), area.width - halfWidth(area))]
}

/** The cells with what follows the last of them under it. */
function endedBy(cells: readonly Row[], tail: readonly Row[]): readonly Row[] {
  const last = cells.at(-1)
  if (last === undefined) return tail
  const { items, height } = stackRows([last, ...tail])
  return [...cells.slice(0, -1), { ...last, items, height }]
}

/** Cards one under the other; a thin rule before one that stands for itself after one told by another. */
function setGroups(
  contents: readonly CardContent[],
  style: CardStyle,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  return contents.flatMap((content, index) => {
    const set = setCard(content, style, area, context)
    const before = contents[index - 1]
    const opensGroup = content.card.as === null && before !== undefined && before.card.as !== null
    return opensGroup ? [groupRule(area, context), set] : [set]
  })
}
