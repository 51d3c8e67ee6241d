import { pointsOf } from '../../drawing/lengths.ts'
import { showsWholeBar } from '../../steps/cards.ts'
import { cardPlainText, type PartSteps, type StepCard } from '../../steps/part-steps.ts'
import type { CardFigure } from '../../strip/card-figure.ts'
import type { MarginNote } from '../document/margin-note.ts'
import { holdNumbers } from '../document/typography.ts'
import { type SetItems, withNotes } from './card-notes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { moveItems, type Row, row, spaceRows, stackRows } from './row.ts'
import { leastRhythmWidth, setRhythm } from './set-rhythm.ts'
import { setSteps } from './set-steps.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/** Columns of a card in points: music at the left, steps at the right; one under the other where the page is narrow. */
export interface CardStyle {
  readonly musicWidth: number
  readonly gutter: number
  readonly stepsWidth: number
  /** The least room left of the music of a bar told by another: "As bar 1 to the end of beat 2, then:". */
  readonly thenLeast: number
  readonly stacked: boolean
}

/** Side by side where the steps keep lines of about 45 characters. */
export function cardStyle(area: Area): CardStyle {
  const gutter = pointsOf(5)
  const thenLeast = pointsOf(33)
  const musicWidth = pointsOf(94.75)
  const stepsWidth = area.width - musicWidth - gutter
  if (stepsWidth >= pointsOf(60)) return { musicWidth, gutter, stepsWidth, thenLeast, stacked: false }
  return { musicWidth: area.width, gutter: 0, stepsWidth: area.width, thenLeast, stacked: true }
}

/** The columns drawn in to the widest music of a section, so that short bars leave no hole before their steps. */
export function fitCards(
  style: CardStyle,
  figures: readonly { readonly width: number; readonly told: 'whole' | 'by another' }[],
  area: Area,
): CardStyle {
  if (style.stacked) return style
  const needed = figures.map(({ width, told }) => (told === 'whole' ? width : width + style.thenLeast))
  const musicWidth = Math.min(style.musicWidth, Math.max(pointsOf(40), ...needed))
  return { ...style, musicWidth, stepsWidth: Math.min(pointsOf(110), area.width - musicWidth - style.gutter) }
}

/** The width of one of two cards side by side. */
export function halfWidth(area: Area): number {
  return (area.width - pointsOf(8)) / 2
}

/** A card of half the width, music over steps: for music so short that a page's width would be left empty. */
export function setHalfCard(content: CardContent, area: Area, context: LayoutContext): Row {
  const width = halfWidth(area)
  const style: CardStyle = { musicWidth: width, gutter: 0, stepsWidth: width, thenLeast: 0, stacked: true }
  const { items, height } = stackedCard(content, style, { ...area, width }, context)
  return row(height, [{ kind: 'anchor', y: 0, name: content.anchor }, ...items], { before: pointsOf(4) })
}

/** What a card is made of. */
export interface CardContent {
  readonly card: StepCard
  readonly figure: CardFigure
  readonly steps: PartSteps
  readonly anchor: string
  /** What the check found in it: the teacher's edition only. */
  readonly notes: readonly MarginNote[]
}

/** A card as one row: name, music and steps. It is never split. */
export function setCard(content: CardContent, style: CardStyle, area: Area, context: LayoutContext): Row {
  const least = showsWholeBar(content.card) ? 0 : style.thenLeast
  const stacked = style.stacked || content.figure.drawing.width > style.musicWidth - least + 1
  const { items, height } = stacked
    ? stackedCard(content, { ...style, musicWidth: area.width }, area, context)
    : showsWholeBar(content.card)
      ? wholeCard(content, style, area, context)
      : thenCard(content, style, area, context)
  return row(height, [{ kind: 'anchor', y: 0, name: content.anchor }, ...items], { before: pointsOf(2.6) })
}

/** From the strip down to the rhythm to say under it. */
const RHYTHM_GAP = pointsOf(1.4)

/**
 * A bar shown whole: its head over the whole width, under it music and the rhythm to say at the left, steps at the right; before
 * them what it is told by, where its shapes are exchanged.
 */
function wholeCard(content: CardContent, style: CardStyle, area: Area, context: LayoutContext): SetItems {
  const head = cardHead(content.card, area, context)
  const column = { ...area, width: style.stepsWidth }
  const { body } = context.style
  const as = [say(holdNumbers(content.card.asText, context.words), 'serif-italic', body.size)]
  const told = content.card.asText === '' ? [] : setParagraph(as, { role: 'P', size: body }, column, context)
  const steps = stackRows([...told, ...setSteps(content.card, column, context)])
  const top = head.height + 1
  const stepsTop = head.height + 2
  const figure = figureItem(content, 0, top, area)
  const rhythm = stackRows(setRhythm(content.card, { ...area, width: style.musicWidth }, context))
  const rhythmTop = top + content.figure.drawing.height + RHYTHM_GAP
  const stepsX = style.musicWidth + style.gutter
  const [bottom, stepsBottom] = [rhythmTop + rhythm.height, stepsTop + steps.height]
  const card = {
    items: [
      ...head.items,
      figure,
      ...moveItems(rhythm.items, 0, rhythmTop),
      ...moveItems(steps.items, stepsX, stepsTop),
    ],
    height: Math.max(bottom, stepsBottom),
  }
  const columns = [
    { x: 0, width: style.musicWidth, bottom, until: null },
    { x: stepsX, width: style.stepsWidth, bottom: stepsBottom, until: null },
  ]
  return withNotes(card, { notes: content.notes, columns }, area, context)
}

/** A bar told by another: what is the same, and the rhythm to say, in words at the left; the music of the rest right of them. */
function thenCard(content: CardContent, style: CardStyle, area: Area, context: LayoutContext): SetItems {
  const { card, figure } = content
  const x = style.musicWidth - figure.drawing.width
  const left = { ...area, width: Math.max(style.thenLeast, x) - pointsOf(3) }
  const beside = leastRhythmWidth(card, context) <= left.width
  const { display, body, small } = context.style
  const heading: StructNode = { role: 'H3', parent: area.parent }
  const also = card.alsoText === '' ? [] : [say(`\u00a0\u00a0${card.alsoText}`, 'sans', body.size)]
  const tags = card.tags.join(' · ')
  const words = stackRows([
    ...setParagraph(
      [say(card.title, 'sans-bold', display.size), ...also],
      { role: 'H3', size: display, node: heading },
      left,
      context,
    ),
    ...(tags === '' ? [] : setParagraph([say(tags, 'sans', small.size)], { role: 'P', size: small }, left, context)),
    ...setParagraph(
      [say(holdNumbers(card.asText, context.words), 'serif-italic', body.size)],
      { role: 'P', size: { size: body.size, leading: 13 } },
      left,
      context,
    ).map((each, index) => (index === 0 ? { ...each, before: pointsOf(3) } : each)),
    ...(beside ? spaceRows(setRhythm(card, left, context), pointsOf(2), 0) : []),
  ])
  const under = beside ? [] : setRhythm(card, { ...area, width: style.musicWidth }, context)
  const rhythm = stackRows(under)
  const rhythmTop = Math.max(words.height, figure.drawing.height) + RHYTHM_GAP
  const steps = stackRows(setSteps(card, { ...area, width: style.stepsWidth }, context))
  const stepsX = style.musicWidth + style.gutter
  const bottom = beside ? rhythmTop - RHYTHM_GAP : rhythmTop + rhythm.height
  const set = {
    items: [
      ...words.items,
      figureItem(content, x, 0, area),
      ...moveItems(rhythm.items, 0, rhythmTop),
      ...moveItems(steps.items, stepsX, 2),
    ],
    height: Math.max(bottom, 2 + steps.height),
  }
  const columns = [
    { x: 0, width: left.width, bottom: words.height, until: beside ? null : rhythmTop },
    { x: 0, width: style.musicWidth, bottom, until: null },
    { x: stepsX, width: style.stepsWidth, bottom: 2 + steps.height, until: null },
  ]
  return withNotes(set, { notes: content.notes, columns }, area, context)
}

/** Music over steps, where they cannot stand side by side; the steps in two columns when there is room. */
function stackedCard(content: CardContent, style: CardStyle, area: Area, context: LayoutContext): SetItems {
  const head = cardHead(content.card, area, context)
  const { card } = content
  const as =
    card.asText === ''
      ? { items: [], height: 0 }
      : stackRows(
          setParagraph(
            [say(holdNumbers(card.asText, context.words), 'serif-italic', context.style.body.size)],
            { role: 'P', size: context.style.body },
            area,
            context,
          ),
        )
  const top = head.height + as.height + 2
  const rhythm = stackRows(setRhythm(card, area, context))
  const rhythmTop = top + content.figure.drawing.height + RHYTHM_GAP
  const figureBottom = rhythmTop + rhythm.height + 4
  const two = style.musicWidth > pointsOf(130) && card.items.length > 1
  const half = (area.width - pointsOf(6)) / 2
  const cut = two ? Math.ceil(card.items.length / 2) : card.items.length
  const width = two ? half : Math.min(area.width, context.style.measure)
  const first = stackRows(setSteps({ ...card, items: card.items.slice(0, cut) }, { ...area, width }, context))
  const second = two
    ? stackRows(setSteps({ ...card, countText: [], items: card.items.slice(cut) }, { ...area, width }, context))
    : { items: [], height: 0 }
  const set = {
    items: [
      ...head.items,
      ...moveItems(as.items, 0, head.height),
      figureItem(content, 0, top, area),
      ...moveItems(rhythm.items, 0, rhythmTop),
      ...moveItems(first.items, 0, figureBottom),
      ...moveItems(second.items, half + pointsOf(6), figureBottom),
    ],
    height: figureBottom + Math.max(first.height, second.height),
  }
  const columns = [{ x: 0, width: area.width, bottom: set.height, until: null }]
  return withNotes(set, { notes: content.notes, columns }, area, context)
}

/** The bar's name, the bars that are the same, and at the right what it teaches. */
function cardHead(card: StepCard, area: Area, context: LayoutContext): SetItems {
  const { display, body, small } = context.style
  const y = display.leading * BASE_OF_LEADING
  const title = lineItem(
    [say(card.title, 'sans-bold', display.size)],
    { x: 0, y },
    { role: 'H3', parent: area.parent },
    context,
  )
  const items: PageItem[] = [title.item]
  let x = title.width + pointsOf(2.4)
  if (card.alsoText !== '') {
    const also = lineItem(
      [say(card.alsoText, 'sans', body.size)],
      { x, y },
      { role: 'P', parent: area.parent },
      context,
    )
    items.push(also.item)
    x += also.width + pointsOf(3)
  }
  const tags = card.tags.join(' · ')
  if (tags !== '') {
    const node: StructNode = { role: 'P', parent: area.parent }
    const measured = lineItem([say(tags, 'sans', small.size)], { x: area.width, y, align: 'right' }, node, context)
    if (x + measured.width <= area.width) items.push(measured.item)
    else {
      const under = lineItem(
        [say(tags, 'sans', small.size)],
        { x: 0, y: display.leading + small.leading * 0.8 },
        node,
        context,
      )
      return { items: [...items, under.item], height: display.leading + small.leading + 2 }
    }
  }
  return { items, height: display.leading }
}

function figureItem(content: CardContent, x: number, y: number, area: Area): PageItem {
  const { figure, card, steps } = content
  const node: StructNode = { role: 'Figure', parent: area.parent, alt: cardPlainText(card, steps) }
  return { kind: 'figure', x, y, drawing: figure.drawing, node }
}
