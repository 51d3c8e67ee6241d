import type { Part } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { cardPlainText, type StepCard } from '../../steps/part-steps.ts'
import type { CardFigure } from '../../strip/card-figure.ts'
import { drawFigurePieces } from '../../strip/figure-pieces.ts'
import { signsInUse } from '../../strip/legend.ts'
import { barAnchor } from '../document/anchors.ts'
import type { MarginNote } from '../document/margin-note.ts'
import type { CardSection } from './card-section.ts'
import { groupRule } from './group-rule.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { textHeight } from './page-frame.ts'
import { keepTogether, type Row, row, rowsHeight, spaceRows, stackRows } from './row.ts'
import { setLegend } from './set-legend.ts'
import { setMarginNotes } from './set-margin-notes.ts'
import { setRhythm } from './set-rhythm.ts'
import { setSection } from './set-section.ts'
import { setStepItems } from './set-steps.ts'
import { setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/**
 * Cards of large print, one under the other in one column: name, music, rhythm to say, steps. A bar wider than the page is cut at its middle beat, so
 * that nothing in it is set smaller. A card is never split, save one higher than a page, which is split between its beats.
 */
export function setLargeCards(section: CardSection, area: Area, context: LayoutContext): readonly Row[] {
  const { title, part, steps, cards, notes } = section
  const figures = cards.map((card) => figuresOf(card, part, area, context))
  const head = setSection({ title, anchor: null, tempo: null, about: '' }, area, context)
  const signs = signsInUse(figures.flat().flatMap((figure) => figure.cells))
  const legend = setLegend(signs, 0, area, context).below
  const page = textHeight(context.style)
  const room = page - rowsHeight([head, ...legend]) - CARD_GAP
  return [
    head,
    ...legend,
    ...cards.flatMap((card, index) => {
      const content = {
        card,
        figures: figures[index] ?? [],
        alt: cardPlainText(card, steps),
        anchor: barAnchor(context.lessonId, part, card.bar),
        notes: notes.filter((note) => note.card === card.bar),
      }
      const set = setLargeCard(content, area, context, index === 0 ? room : page)
      return index === 0 ? set : [groupRule(area, context), ...set]
    }),
  ]
}

function figuresOf(card: StepCard, part: Part, area: Area, context: LayoutContext): readonly CardFigure[] {
  const { lesson, fonts, style } = context
  return drawFigurePieces({
    lesson,
    part,
    fonts,
    bar: card.bar,
    fromTicks: card.fromTicks,
    toTicks: card.toTicks,
    staffSpacePt: style.cardStaffSpace,
    minTextPt: style.minTextPt,
    pageWidthPt: area.width,
  })
}

const CARD_GAP = pointsOf(5)
const FIGURE_GAP = pointsOf(4)

interface LargeCard {
  readonly card: StepCard
  readonly figures: readonly CardFigure[]
  /** The whole bar in words. */
  readonly alt: string
  readonly anchor: string
  readonly notes: readonly MarginNote[]
}

/** One row where the card fits into `room` points; else a row for each thing in it that is never cut. */
function setLargeCard(content: LargeCard, area: Area, context: LayoutContext, room: number): readonly Row[] {
  const { card, figures, anchor } = content
  const node: StructNode = { role: 'Figure', parent: area.parent, alt: content.alt }
  const music = figures.map(({ drawing }): Row => {
    return row(drawing.height, [{ kind: 'figure', x: 0, y: 0, drawing, node }], { before: FIGURE_GAP })
  })
  const rhythm = spaceRows(setRhythm(card, area, context), pointsOf(2.5), 0)
  const steps = setStepItems(card, area, context)
  const [first = [], ...later] = steps.map((item, index) => spaceRows(item, index === 0 ? pointsOf(4) : 0, 0))
  const notes = spaceRows(setMarginNotes(content.notes, area, context), pointsOf(4), 0)
  const opening = keepTogether([...cardHead(card, area, context), ...music, ...rhythm, ...first])
  const rows = [...opening, ...later.flatMap(keepTogether), ...keepTogether(notes)]
  const { items, height } = stackRows(rows)
  const anchored = (own: readonly PageItem[]): readonly PageItem[] => [{ kind: 'anchor', y: 0, name: anchor }, ...own]
  if (height <= room) return [row(height, anchored(items), { before: CARD_GAP })]
  return rows.map((each, index) => (index > 0 ? each : { ...each, items: anchored(each.items), before: CARD_GAP }))
}

/** The bar's name with the bars that are the same, what it teaches, and what it is told by, each in lines of its own. */
function cardHead(card: StepCard, area: Area, context: LayoutContext): readonly Row[] {
  const { display, body, small } = context.style
  const node: StructNode = { role: 'H3', parent: area.parent }
  const also = card.alsoText === '' ? [] : [say(`\u00a0 ${card.alsoText}`, 'sans', body.size)]
  const name = setParagraph(
    [say(card.title, 'sans-bold', display.size), ...also],
    { role: 'H3', size: display, node, hyphenate: false },
    area,
    context,
  )
  const tags = card.tags.join(' · ')
  return [
    ...name,
    ...(tags === '' ? [] : setParagraph([say(tags, 'sans', small.size)], { role: 'P', size: small }, area, context)),
    ...(card.asText === ''
      ? []
      : spaceRows(
          setParagraph([say(card.asText, 'serif-italic', body.size)], { role: 'P', size: body }, area, context),
          pointsOf(1.5),
          0,
        )),
  ]
}
