import type { Part } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { cardPlainText, type StepCard } from '../../steps/part-steps.ts'
import type { CardFigure } from '../../strip/card-figure.ts'
import { drawFigurePieces } from '../../strip/figure-pieces.ts'
import { signsInUse } from '../../strip/legend.ts'
import { barAnchor } from '../document/anchors.ts'
import type { BarNote } from '../document/margin-note.ts'
import { holdNumbers } from '../document/typography.ts'
import { oneLine } from './break-lines.ts'
import type { CardSection } from './card-section.ts'
import { groupRule } from './group-rule.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { textHeight } from './page-frame.ts'
import type { TextSize } from './page-style.ts'
import { keepTogether, type Row, row, rowsHeight, spaceRows, stackRows } from './row.ts'
import { setLegend } from './set-legend.ts'
import { setMarginNotes } from './set-margin-notes.ts'
import { leastRhythmWidth, setRhythm } from './set-rhythm.ts'
import { setSection } from './set-section.ts'
import { setOpeningWords, setStepItems } from './set-steps.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { say, type TextRun } from './text-run.ts'

/**
 * Cards of large print, one under the other in one column: name, music, rhythm to say, steps. A bar wider than the page is cut at its middle beat, so
 * that nothing in it is set smaller. A card is never split, save between its steps where it is higher than the page or would leave most of one empty.
 */
export function setLargeCards(section: CardSection, area: Area, context: LayoutContext): readonly Row[] {
  const { title, part, steps, cards, notes } = section
  const contents = cards.map((card): LargeCard => {
    return {
      card,
      figures: figuresOf(card, part, area, context),
      alt: cardPlainText(card, steps),
      anchor: barAnchor(context.lessonId, part, card.bar),
      notes: notes.filter((note) => note.card === card.bar),
    }
  })
  const head = setSection({ title, anchor: null, tempo: null, about: '' }, area, context)
  const signs = signsInUse(contents.flatMap(({ figures }) => figures.flatMap(({ cells }) => cells)))
  const legend = [...setLegend(signs, 0, area, context).below, ...setOpeningWords(section.opening, area, context)]
  const page = textHeight(context.style)
  const first = page - rowsHeight([head, ...legend]) - CARD_GAP
  const rule = groupRule(area, context)
  const set = setThatFits(contents, { first, page }, area, context)
  return [head, ...legend, ...set.flatMap((card, index) => (index === 0 ? [card] : [rule, card]))]
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

const CARD_GAP = pointsOf(4)
const FIGURE_GAP = pointsOf(2.5)

interface LargeCard {
  readonly card: StepCard
  /** One, or its pieces where the bar is wider than the page. */
  readonly figures: readonly CardFigure[]
  /** The whole bar in words. */
  readonly alt: string
  readonly anchor: string
  readonly notes: readonly BarNote[]
}

/** The heights in points that the first card and any other may take. */
interface Room {
  readonly first: number
  readonly page: number
}

/** The cards at the usual size of steps, or all of them at the least size of words where more of them stay whole so. */
function setThatFits(
  contents: readonly LargeCard[],
  { first, page }: Room,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { small } = context.style
  const tight = { ...context, style: { ...context.style, steps: small } }
  const ways = [context, tight].map((each) => contents.map((content) => setLargeCard(content, area, each)))
  const tooHigh = (way: readonly Row[]): number =>
    way.filter(({ height }) => height > page).length + ((way[0]?.height ?? 0) > first ? 1 : 0)
  return ways.reduce((best, way) => (tooHigh(way) < tooHigh(best) ? way : best))
}

/** A card as one row, which may be cut between its steps. */
function setLargeCard(content: LargeCard, area: Area, context: LayoutContext): Row {
  const { card, anchor } = content
  const steps = setStepItems(card, area, context)
  const [first = [], ...later] = steps.map((item, index) => spaceRows(item, index === 0 ? STEPS_GAP : 0, 0))
  const notes = spaceRows(setMarginNotes(content.notes, area, context), STEPS_GAP, 0)
  const opening = keepTogether([...setMusic(content, area, context), ...first])
  const rows = [...opening, ...later.flatMap(keepTogether), ...keepTogether(notes)]
  const { items, height } = stackRows(rows)
  const anchored = (own: readonly PageItem[]): readonly PageItem[] => [{ kind: 'anchor', y: 0, name: anchor }, ...own]
  const pieces = rows.map((each, index) =>
    index > 0 ? each : { ...each, items: anchored(each.items), before: CARD_GAP },
  )
  return row(height, anchored(items), { before: CARD_GAP, pieces })
}

const STEPS_GAP = pointsOf(3.4)
/** The least room for the name of a bar left of its music, and between the two. */
const NAME_WIDTH = pointsOf(64)
const NAME_GAP = pointsOf(5)

/** Name, music and rhythm over the steps. Short music stands at the right of its name, so that two such cards share a page. */
function setMusic({ card, figures, alt }: LargeCard, area: Area, context: LayoutContext): readonly Row[] {
  const node: StructNode = { role: 'Figure', parent: area.parent, alt }
  const figureAt = (x: number, { drawing }: CardFigure): PageItem => ({ kind: 'figure', x, y: 0, drawing, node })
  const [only, ...others] = figures
  const nameWidth = area.width - (only?.drawing.width ?? 0) - NAME_GAP
  const rhythmGap = pointsOf(2)
  if (only === undefined || others.length > 0 || nameWidth < NAME_WIDTH) {
    const music = figures.map((figure) => row(figure.drawing.height, [figureAt(0, figure)], { before: FIGURE_GAP }))
    return [...cardHead(card, area, context), ...music, ...spaceRows(setRhythm(card, area, context), rhythmGap, 0)]
  }
  const left = { ...area, width: nameWidth }
  const beside = leastRhythmWidth(card, context) <= nameWidth
  const said = spaceRows(setRhythm(card, beside ? left : area, context), beside ? FIGURE_GAP : rhythmGap, 0)
  const words = stackRows([...cardHead(card, left, context), ...(beside ? said : [])])
  const items = [...words.items, figureAt(area.width - only.drawing.width, only)]
  return [row(Math.max(words.height, only.drawing.height), items), ...(beside ? [] : said)]
}

/** The bar's name, the bars that are the same and what it teaches, on one line where it holds them; then what it is told by. */
function cardHead(card: StepCard, area: Area, context: LayoutContext): readonly Row[] {
  const { words, style } = context
  const { display, body, small } = style
  const name = say(card.title, 'sans-bold', display.size)
  const also = card.alsoText === '' ? [] : [say(holdNumbers(card.alsoText, words), 'sans', body.size)]
  const tags = card.tags.length === 0 ? [] : [say(card.tags.join(' · '), 'sans', small.size)]
  const as = card.asText === '' ? [] : [say(holdNumbers(card.asText, words), 'serif-italic', body.size)]
  const below = (runs: readonly TextRun[], size: TextSize): readonly Row[] =>
    setParagraph(runs, { role: 'P', size }, area, context)
  const widthOf = (runs: readonly TextRun[]): number => oneLine(runs, { fonts: context.fonts }).width
  const heading: StructNode = { role: 'H3', parent: area.parent }
  const node: StructNode = { role: 'P', parent: area.parent }
  const y = display.leading * BASE_OF_LEADING
  const alsoX = widthOf([name]) + body.size * 0.6
  const end = also.length === 0 ? widthOf([name]) : alsoX + widthOf(also)
  const beside = end <= area.width
  const tagsBeside = beside && end + body.size + widthOf(tags) <= area.width
  const line = row(display.leading, [
    lineItem([name], { x: 0, y }, heading, context).item,
    ...(beside && also.length > 0 ? [lineItem(also, { x: alsoX, y }, node, context).item] : []),
    ...(tagsBeside && tags.length > 0
      ? [lineItem(tags, { x: area.width, y, align: 'right' }, node, context).item]
      : []),
  ])
  return [
    line,
    ...(beside ? [] : below(also, body)),
    ...(tagsBeside ? [] : below(tags, small)),
    ...spaceRows(below(as, body), pointsOf(1.5), 0),
  ]
}
