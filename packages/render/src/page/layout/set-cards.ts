import type { BarRange } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { type PartSteps, type StepCard, stepsOfPart } from '../../steps/part-steps.ts'
import type { RichText } from '../../steps/speak/rich-text.ts'
import { type CardFigure, drawCardFigure } from '../../strip/card-figure.ts'
import { signsInUse } from '../../strip/legend.ts'
import type { StripCell } from '../../strip/strip-cells.ts'
import { barAnchor } from '../document/anchors.ts'
import { withEffort } from '../document/card-tags.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { cardInOneLine, plainPickup } from '../document/plain-pickup.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, row, spaceRows } from './row.ts'
import { type CardContent, type CardStyle, cardStyle, fitCards, halfWidth, setCard, setPair } from './set-card.ts'
import { setLegend } from './set-legend.ts'
import { setMarginNotes } from './set-margin-notes.ts'
import { setSection } from './set-section.ts'
import { lineItem, setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/** A figure wider than its column by no more than this share is drawn with narrower cells, so that its steps stand beside it. */
const SQUEEZED = 1.08

/** One card for each distinct bar, under a section head with the key to the strip; bars that need none in lines at the end. */
export function setCards(
  block: Extract<DocumentBlock, { kind: 'cards' }>,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { lesson, fonts, words } = context
  const { part, bars } = block
  const told = stepsOfPart(lesson, part)
  const steps = { ...told, cards: withEffort(told.cards, { lesson, part, words }) }
  const wanted = steps.cards.filter((card) => bars === null || overlaps(bars, { from: card.bar, to: card.bar }))
  const pickup = plainPickup(part, wanted)
  const cards = wanted.filter((card) => card !== pickup)
  const style = cardStyle(area, context)
  const figures = cards.map((card) => {
    const column = card.as === null ? style.musicWidth : style.musicWidth - style.thenLeast
    const draw = (pageWidthPt: number): CardFigure =>
      drawCardFigure({
        lesson,
        part,
        fonts,
        bar: card.bar,
        fromTicks: card.fromTicks,
        toTicks: card.toTicks,
        staffSpacePt: context.style.cardStaffSpace,
        pageWidthPt,
        maxWidthPt: column,
      })
    const figure = draw(area.width)
    const over = figure.drawing.width / column
    return !style.stacked && over > 1 && over <= SQUEEZED ? draw(column) : figure
  })
  const widths = figures.map(({ drawing }, index) => {
    return { width: drawing.width, told: cards[index]?.as === null ? 'whole' : 'by another' } as const
  })
  const fitted = fitCards(style, widths, area)
  const cells = figures.flatMap((figure): readonly StripCell[] => figure.cells)
  const name = lineItem([say(block.title, 'sans-bold', context.style.body.size)], { x: 0, y: 0 }, null, context)
  const legend = setLegend(signsInUse(cells), name.width, area, context)
  const head = setSection(
    { title: block.title, anchor: null, tempo: null, about: '', right: legend.beside },
    area,
    context,
  )
  const contents = cards.flatMap((card, index): readonly CardContent[] => {
    const figure = figures[index]
    if (figure === undefined) return []
    const notes = block.notes.filter((note) => note.card === card.bar)
    return [{ card, figure, steps, anchor: barAnchor(context.lessonId, part, card.bar), notes }]
  })
  const short = !style.stacked && cards.length > 1 && figures.every(({ drawing }) => drawing.width <= halfWidth(area))
  const rows = short
    ? pairs(contents).map((pair) => setPair(pair, area, context))
    : setGroups(contents, fitted, area, context)
  const pickupNotes = block.notes.filter((note) => note.card === pickup?.bar)
  const lines = [...setLines({ steps, bars, pickup }, area, context), ...setMarginNotes(pickupNotes, area, context)]
  return [head, ...legend.below, ...rows, ...lines]
}

function pairs(contents: readonly CardContent[]): readonly (readonly CardContent[])[] {
  return contents.flatMap((_, index) => (index % 2 === 0 ? [contents.slice(index, index + 2)] : []))
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

function overlaps(a: BarRange, b: BarRange): boolean {
  return a.from <= b.to && b.from <= a.to
}

/** The thin rule between a card told by another and the next that stands for itself; it never opens a page. */
function groupRule(area: Area, context: LayoutContext): Row {
  const { rule } = context.style
  const drawing = fourStrokes(area.width, rule.group, rule.gap)
  return row(rule.group, [{ kind: 'figure', x: 0, y: 0, drawing, node: null }], {
    before: pointsOf(3.2),
    after: pointsOf(2.2),
    keepNext: true,
    atTop: 'drop',
  })
}

interface Lines {
  readonly steps: PartSteps
  readonly bars: BarRange | null
  readonly pickup: StepCard | null
}

/** Bars without a card: "Pickup Scratch down and up on &. Bars 3, 5 and 7 are bar 1." */
function setLines({ steps, bars, pickup }: Lines, area: Area, context: LayoutContext): readonly Row[] {
  const { small } = context.style
  const lines = steps.lines.filter((line) => bars === null || overlaps(bars, line.bars))
  const said: { readonly lead: string; readonly text: RichText }[] =
    pickup === null ? [...lines] : [{ lead: pickup.title, text: cardInOneLine(pickup) }, ...lines]
  if (said.length === 0) return []
  const runs = said.flatMap((line, index) => [
    ...(index === 0 ? [] : [say('\u00a0\u00a0 ', 'sans', small.size)]),
    say(`${line.lead} `, 'sans-semibold', small.size),
    ...line.text.map((piece) =>
      say(
        piece.text,
        piece.style === 'count' ? 'sans-semibold' : piece.style === 'italic' ? 'sans-italic' : 'sans',
        small.size,
      ),
    ),
  ])
  const rows = setParagraph(runs, { role: 'P', size: small, hyphenate: false }, area, context)
  return spaceRows(rows, pointsOf(2.6), pointsOf(2))
}
