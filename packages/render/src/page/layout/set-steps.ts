import { pointsOf } from '../../drawing/lengths.ts'
import type { StepCard } from '../../steps/part-steps.ts'
import type { RichText } from '../../steps/speak/rich-text.ts'
import { holdCounts, holdNumbers } from '../document/typography.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { StructNode } from './page-content.ts'
import { indentRows, type Row, row, spaceRows } from './row.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { say, type TextRun } from './text-run.ts'

const NUMERAL_ROOM = pointsOf(5)
/** In large print the room follows the widest label, and is never less than this. */
const LARGE_NUMERAL_ROOM = pointsOf(10)

/**
 * Steps as a list: the beat in the accent at the left, its sentences beside it. Remarks are italic. What describes a grip finger by
 * finger is left to its grid; the alternative text of the figure says it.
 */
export function setSteps(card: StepCard, area: Area, context: LayoutContext): readonly Row[] {
  return setStepItems(card, area, context).flat()
}

/** The same, the rows of each step apart; how the bar is counted belongs to the first. */
export function setStepItems(card: StepCard, area: Area, context: LayoutContext): readonly (readonly Row[])[] {
  const { steps, small, large } = context.style
  const list: StructNode = { role: 'L', parent: area.parent }
  const room = large ? largeNumeralRoom(card, context) : numeralRoom(card)
  const counted =
    card.countText.length === 0
      ? []
      : setParagraph(richRuns(card.countText, small.size, 'sans', context), { role: 'P', size: small }, area, context)
  const printed = card.items.filter((item) => item.clauses.some(({ kind }) => kind !== 'shape'))
  const items = printed.map((item, index) => {
    const li: StructNode = { role: 'LI', parent: list }
    const label = lineItem(
      [say(item.label, 'sans-bold', steps.size, { ink: 'accent' })],
      { x: 0, y: steps.leading * BASE_OF_LEADING },
      { role: 'Lbl', parent: li },
      context,
    )
    const told = item.clauses.filter((clause) => clause.kind !== 'shape')
    const runs = told.flatMap((clause, at) => [
      ...(at === 0 ? [] : [large && clause.kind === 'remark' ? newLine(steps.size) : say(' ', 'serif', steps.size)]),
      ...richRuns(clause.text, steps.size, 'serif', context),
    ])
    const body: StructNode = { role: 'LBody', parent: li }
    const rows = indentRows(
      setParagraph(
        runs,
        { role: 'LBody', size: steps, node: body, hyphenate: false },
        { ...area, width: area.width - room },
        context,
      ),
      room,
    )
    const first = rows[0] ?? row(steps.leading, [])
    return spaceRows(
      [{ ...first, items: [label.item, ...first.items] }, ...rows.slice(1)],
      index === 0 ? 0 : large ? steps.leading * 0.25 : pointsOf(0.9),
      0,
    )
  })
  const [first = [], ...later] = items
  return [[...spaceRows(counted, 0, pointsOf(1) * context.style.ease), ...first], ...later]
}

/** What is said before the cards of a part; it stays with the first of them. */
export function setOpeningWords(text: RichText, area: Area, context: LayoutContext): readonly Row[] {
  if (text.length === 0) return []
  const { small, ease } = context.style
  const rows = setParagraph(richRuns(text, small.size, 'sans', context), { role: 'P', size: small }, area, context)
  return spaceRows(rows, pointsOf(1.5) * ease, 0).map((each) => ({ ...each, keepNext: true }))
}

function numeralRoom(card: StepCard): number {
  return card.items.some((item) => item.label.length > 2) ? pointsOf(7.5) : NUMERAL_ROOM
}

function largeNumeralRoom(card: StepCard, { fonts, style }: LayoutContext): number {
  const widths = card.items.map(({ label }) => fonts.measure('sans-bold', style.steps.size, label).width)
  return Math.max(LARGE_NUMERAL_ROOM, ...widths.map((width) => width + pointsOf(3.5)))
}

/** A remark of the teacher's starts a line of its own in large print. */
function newLine(size: number): TextRun {
  return say('', 'serif', size, { breaksAfter: true })
}

function richRuns(
  text: RichText,
  size: number,
  voice: 'serif' | 'sans',
  { words, style }: LayoutContext,
): readonly TextRun[] {
  return text.map((piece) => {
    // Among serifs the sans looks larger than it is.
    const even = voice === 'sans' || style.large
    if (piece.style === 'count') return say(holdCounts(piece.text), 'sans-semibold', even ? size : size * 0.97)
    if (piece.style === 'italic') return say(piece.text, voice === 'serif' ? 'serif-italic' : 'sans-italic', size)
    return say(holdNumbers(piece.text, words), voice, size)
  })
}
