import type { BarRange } from '@barwise/parser'
import type { Element, ElementContent, Properties } from 'hast'
import { h } from 'hastscript'
import { barAnchor } from '../../page/document/anchors.ts'
import type { DocumentBlock } from '../../page/document/document-block.ts'
import type { BarNote } from '../../page/document/margin-note.ts'
import type { PageWords } from '../../page/document/page-words.ts'
import { cardInOneLine } from '../../page/document/plain-pickup.ts'
import { toldCards } from '../../page/document/told-cards.ts'
import { holdCounts, holdNumbers } from '../../page/document/typography.ts'
import {
  type PartSteps,
  type RichText,
  type StepCard,
  type StepClause,
  stepsOfPart,
  textOf,
} from '../../steps/index.ts'
import { besideShare, cardFigures, figureNodes } from './card-figures.ts'
import { stripLegend } from './legend.ts'
import { marginNotes } from './margin-notes.ts'
import { el, spoken } from './nodes.ts'
import { claimId, type PageContext } from './page-context.ts'
import { rhythmLine } from './rhythm-line.ts'
import { cardsAnchor } from './section-anchors.ts'
import { signsApart } from './words.ts'

/** A section with one card for each distinct bar: its figure and its steps in real text; bars without a card get a line. */
export function cardsSection(block: Extract<DocumentBlock, { kind: 'cards' }>, context: PageContext): Element {
  const { part, bars } = block
  const steps = stepsOfPart(context.lesson, part)
  const { pickup, cards, lines } = toldCards(block, steps, context)
  const figures = cardFigures(part, cards, context)
  const id = claimId(cardsAnchor(context.document.id, part), context)
  return h(
    'section',
    { className: ['section'], dataPart: part.id, ...(id === undefined ? {} : { id }) },
    el('div', 'heading', [el('h2', '', [block.title]), ...formLine(steps, bars, context.words)]),
    el('p', 'counting', richWords(steps.count, context.words)),
    stripLegend(
      figures.wide.figures.flat().flatMap(({ cells }) => cells),
      context,
    ),
    ...cards.map((card, index) =>
      cardOf(
        card,
        { node: figureNodes(card, index, figures, context), share: besideShare(index, figures, context) },
        block,
        context,
      ),
    ),
    ...linesOf(pickup, lines, block, context),
    ...marginNotes(notesOf(block, pickup), context),
  )
}

/** What needs no card: a plain pickup, and bars that are another again, a line each. */
function linesOf(
  pickup: StepCard | null,
  lines: PartSteps['lines'],
  block: Extract<DocumentBlock, { kind: 'cards' }>,
  context: PageContext,
): readonly Element[] {
  const line = (lead: string, words: readonly ElementContent[], marks: Properties = {}): Element =>
    h('li', marks, el('strong', '', [lead]), ' ', ...words)
  const items = [
    ...(pickup === null
      ? []
      : [
          line(
            pickup.title,
            [
              h(
                'span',
                { dataFrom: pickup.fromTicks, dataTo: pickup.toTicks },
                ...richWords(cardInOneLine(pickup), context.words),
              ),
            ],
            { id: claimId(barAnchor(context.document.id, block.part, pickup.bar), context), dataCard: pickup.bar },
          ),
        ]),
    ...lines.map(({ lead, text }) => line(lead, richWords(text, context.words))),
  ]
  return items.length === 0 ? [] : [el('ul', 'same', items)]
}

function formLine(steps: PartSteps, bars: BarRange | null, words: PageWords): readonly Element[] {
  return bars === null ? [el('p', '', richWords(steps.form, words))] : []
}

function cardOf(
  card: StepCard,
  figure: { readonly node: Element; readonly share: number | null },
  block: Extract<DocumentBlock, { kind: 'cards' }>,
  context: PageContext,
): Element {
  const id = claimId(barAnchor(context.document.id, block.part, card.bar), context)
  const text = (name: string, words: string): readonly Element[] => (words === '' ? [] : [el('p', name, [words])])
  const head = [
    el('h3', '', [card.title]),
    ...text('also', holdNumbers(card.alsoText, context.words)),
    ...text('tags', card.tags.join(' · ')),
  ]
  return h(
    'article',
    {
      className: ['card', ...(figure.share === null ? [] : ['beside', `b${figure.share}`])],
      dataCard: card.bar,
      ...(card.as === null ? {} : { dataAs: card.as.bar }),
      ...(id === undefined ? {} : { id }),
      ariaLabel: card.title,
    },
    el('header', 'name', head),
    ...(card.asText === '' ? [] : [el('p', 'as', signsApart(holdNumbers(card.asText, context.words)))]),
    // The figure shows them; who hears the page is told.
    ...(card.chordText.length === 0 ? [] : [spoken(textOf(card.chordText))]),
    ...(card.countText.length === 0 ? [] : [el('p', 'counting', richWords(card.countText, context.words))]),
    el('div', 'told', [
      figure.node,
      ...rhythmLine(card, block.part, context),
      el(
        'ol',
        'steps',
        card.items.map((item) => itemOf(item, context.words)),
      ),
    ]),
    ...marginNotes(notesOf(block, card), context),
  )
}

function notesOf(block: Extract<DocumentBlock, { kind: 'cards' }>, card: StepCard | null): readonly BarNote[] {
  return block.notes.filter((note) => note.card === card?.bar)
}

function itemOf(item: StepCard['items'][number], words: PageWords): Element {
  const clauses = item.clauses.flatMap((clause, index): readonly (ElementContent | string)[] => [
    ...(index === 0 ? [] : [' ']),
    clauseOf(clause, item.kind !== 'or', words),
  ])
  // What is told of the whole bar has no beat.
  if (item.label === '') return el('li', 'whole', clauses)
  return h('li', el('span', 'number', [item.label]), el('div', '', clauses))
}

/**
 * What is to be done carries the ticks it tells, so that it can be found and lit while it sounds; remarks, descriptions of grips and other ways to
 * play a beat are never lit.
 */
function clauseOf({ kind, fromTicks, toTicks, text }: StepClause, sounds: boolean, words: PageWords): Element {
  return h('span', kind === 'step' && sounds ? { dataFrom: fromTicks, dataTo: toTicks } : {}, ...richWords(text, words))
}

/** Words in pieces: counts in the sans, remarks in italics; "fret 7" and its like never break. */
function richWords(text: RichText, words: PageWords): readonly ElementContent[] {
  return text.map((piece): ElementContent => {
    if (piece.style === 'count') return el('b', 'count', [holdCounts(piece.text)])
    const held = holdNumbers(piece.text, words)
    return piece.style === 'italic' ? el('i', '', [held]) : { type: 'text', value: held }
  })
}
