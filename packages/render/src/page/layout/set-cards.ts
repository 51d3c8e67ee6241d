import type { BarRange } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { type PartSteps, stepsOfPart } from '../../steps/part-steps.ts'
import { type CardFigure, drawCardFigure } from '../../strip/card-figure.ts'
import { signsInUse } from '../../strip/legend.ts'
import type { StripCell } from '../../strip/strip-cells.ts'
import { barAnchor } from '../document/anchors.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, row, spaceRows } from './row.ts'
import { cardStyle, setCard } from './set-card.ts'
import { setLegend } from './set-legend.ts'
import { setSection } from './set-section.ts'
import { setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/** One card for each distinct bar, under a section head with the key to the strip; bars that need none in lines at the end. */
export function setCards(
  block: Extract<DocumentBlock, { kind: 'cards' }>,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { lesson, fonts } = context
  const { part, bars } = block
  const steps = stepsOfPart(lesson, part)
  const cards = steps.cards.filter((card) => bars === null || overlaps(bars, { from: card.bar, to: card.bar }))
  const style = cardStyle(area, context)
  const figures = cards.map((card) =>
    drawCardFigure({
      lesson,
      part,
      fonts,
      bar: card.bar,
      fromTicks: card.fromTicks,
      toTicks: card.toTicks,
      staffSpacePt: context.style.cardStaffSpace,
      pageWidthPt: area.width,
      maxWidthPt: card.as === null ? style.musicWidth : style.musicWidth - style.thenLeast,
    }),
  )
  const cells = figures.flatMap((figure): readonly StripCell[] => figure.cells)
  const legend = setLegend(signsInUse(cells), area, context)
  const head = setSection(
    { title: block.title, anchor: null, tempo: null, about: '', right: legend.beside },
    area,
    context,
  )
  const rows = cards.flatMap((card, index): readonly Row[] => {
    const figure: CardFigure | undefined = figures[index]
    if (figure === undefined) return []
    const set = setCard({ card, figure, steps, anchor: barAnchor(context.lessonId, part, card.bar) }, area, context)
    const opensGroup = card.as === null && index > 0 && cards[index - 1]?.as !== null
    return opensGroup ? [groupRule(area, context), set] : [set]
  })
  return [head, ...legend.below, ...rows, ...setLines(steps, bars, area, context)]
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

/** Bars without a card: "Bars 3, 5 and 7 are bar 1." */
function setLines(steps: PartSteps, bars: BarRange | null, area: Area, context: LayoutContext): readonly Row[] {
  const { small } = context.style
  const lines = steps.lines.filter((line) => bars === null || overlaps(bars, line.bars))
  if (lines.length === 0) return []
  const runs = lines.flatMap((line, index) => [
    ...(index === 0 ? [] : [say('  ', 'sans', small.size)]),
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
