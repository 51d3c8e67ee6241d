import { pointsOf } from '../../drawing/lengths.ts'
import { type PartSteps, type StepCard, stepsOfPart } from '../../steps/part-steps.ts'
import { plain, type RichText } from '../../steps/speak/rich-text.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { cardInOneLine } from '../document/plain-pickup.ts'
import { toldCards } from '../document/told-cards.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, spaceRows } from './row.ts'
import { setLargeCards } from './set-large-cards.ts'
import { setMarginNotes } from './set-margin-notes.ts'
import { setParagraph } from './set-text.ts'
import { setUsualCards } from './set-usual-cards.ts'
import { say } from './text-run.ts'

/** One card for each distinct bar, under a section head with the key to the strip; bars that need none in lines at the end. */
export function setCards(
  block: Extract<DocumentBlock, { kind: 'cards' }>,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { lesson, words } = context
  const { part } = block
  const steps = stepsOfPart(lesson, part)
  const { pickup, cards, lines } = toldCards(block, steps, { lesson, words })
  const pickupNotes = block.notes.filter((note) => note.card === pickup?.bar)
  const setTail = (room: Area): readonly Row[] => [
    ...setLines(pickup, lines, room, context),
    ...setMarginNotes(pickupNotes, room, context),
  ]
  const opening = openingOf(steps, block.bars === null, context)
  const section = { title: block.title, part, steps, cards, opening, notes: block.notes }
  return context.style.large
    ? [...setLargeCards(section, area, context), ...setTail(area)]
    : setUsualCards(section, setTail, area, context)
}

/** The form of a part that is told whole, and how it is counted; in large print, where a card fills its page, only a count that its slots do not show. */
function openingOf(steps: PartSteps, whole: boolean, { style }: LayoutContext): RichText {
  if (style.large) return steps.countOffGrid ? steps.count : []
  return [...(whole ? [...steps.form, plain(' ')] : []), ...steps.count]
}

/** Bars without a card: "Pickup Scratch down and up on &. Bars 3, 5 and 7 are bar 1." */
function setLines(
  pickup: StepCard | null,
  lines: PartSteps['lines'],
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { small } = context.style
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
  return spaceRows(rows, pointsOf(2.6) * context.style.ease, pointsOf(2) * context.style.ease)
}
