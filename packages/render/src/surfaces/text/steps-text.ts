import type { Bar, Part } from '@barwise/parser'
import type { DocumentBlock } from '../../page/document/document-block.ts'
import type { MarginNote } from '../../page/document/margin-note.ts'
import { stripBars } from '../../page/document/strip-bars.ts'
import { toldCards } from '../../page/document/told-cards.ts'
import { capital } from '../../page/document/typography.ts'
import {
  heardRhythm,
  itemPlainText,
  type PartSteps,
  plainText,
  type RhythmSlot,
  rhythmOf,
  type StepCard,
} from '../../steps/index.ts'
import { marginLines } from './margin-text.ts'
import type { TextContext } from './text-context.ts'
import type { RhythmWord } from './text-words.ts'

type Music = Extract<DocumentBlock, { kind: 'systems' | 'cards' | 'strip' }>

/** The form of a part in sentences, once: before its steps, or at its head. Empty when it has been said. */
export function formText(part: Part, context: TextContext): string {
  if (context.said.has(`form ${part.id}`)) return ''
  context.said.add(`form ${part.id}`)
  const steps = context.steps(part)
  const first = part.bars.find((bar) => bar.number > 0)?.number
  const pickup = part.bars.some((bar) => bar.number === 0)
  const again = pickup && part.repeats.some((repeat) => repeat.from === first)
  return [plainText(steps.form, steps.andWord, steps.countMarks), ...(again ? [context.text.pickupOnce] : [])].join(' ')
}

/**
 * Staff and tab in words. Where the part has cards they tell it, and the staves only say where, unless the cards follow at once
 * (`toCards`); where it has none, its steps are told in this place, once.
 */
export function systemsText(block: Music, toCards: boolean, context: TextContext): string {
  const { part, bars } = block
  const known = context.withCards.has(part.id) || context.said.has(`steps ${part.id}`)
  if (!known) {
    if (bars === null) context.said.add(`steps ${part.id}`)
    return cardsText(block, context)
  }
  const heading = context.toldUnder.get(part.id)
  return !toCards && heading !== undefined ? context.text.toldUnder(part.title, bars, heading) : ''
}

/** The cards of a part, one after the other: how it is counted, then each bar with a line a beat and its rhythm to say. */
export function cardsText(block: Music, context: TextContext): string {
  const { part } = block
  const steps = context.steps(part)
  const { pickup, cards, lines: told } = toldCards(block, steps, context)
  const lines = told
    // The names of the cards say which bars are the same.
    .filter((line) => line.kind !== 'again')
    .map((line) => `${line.lead} ${plainText(line.text, steps.andWord, steps.countMarks)}`)
  const head = [formText(part, context), plainText(steps.count, steps.andWord, steps.countMarks)].filter(
    (text) => text !== '',
  )
  const byNumber = new Map(part.bars.map((bar) => [bar.number, bar]))
  const shown = [...(pickup === null ? [] : [pickup]), ...cards].flatMap((card) => {
    const bar = byNumber.get(card.bar)
    return bar === undefined ? [] : [{ bar, card }]
  })
  return [
    [
      ...head,
      ...rhythmHelp(
        shown.map(({ bar, card }) => [bar, card] as const),
        context,
      ),
    ].join('\n'),
    ...shown.map(({ bar, card }) =>
      [cardText(card, bar, steps, context), ...marginLines(notesOf(block, card), context)].join('\n'),
    ),
    ...(lines.length === 0 ? [] : [lines.join('\n')]),
  ].join('\n\n')
}

function notesOf(block: Music, card: StepCard): readonly MarginNote[] {
  return block.kind === 'cards' ? block.notes.filter((note) => note.card === card.bar) : []
}

function cardText(card: StepCard, bar: Bar, steps: PartSteps, { lesson }: TextContext): string {
  const head = [card.title, card.alsoText].filter((text) => text !== '').join(', ')
  const items = card.items.map((item) => {
    const words = itemPlainText(item, steps)
    // Another way to play a beat says of itself that it is one.
    return item.kind === 'or' || item.label === '' ? words : `${item.label}: ${words}`
  })
  // What leads into the beats stands right before them.
  const tags = card.tags.join(', ')
  const said = [
    tags === '' ? '' : `${capital(tags)}.`,
    plainText(card.chordText, steps.andWord, steps.countMarks),
    plainText(card.countText, steps.andWord, steps.countMarks),
    card.asText,
  ]
  return [`${head}.`, ...said, ...items, card.rhythm === '' ? '' : heardRhythm(lesson, bar, card)]
    .filter((line) => line !== '')
    .join('\n')
}

/** The rhythm of some bars alone, one a line, bars that sound the same together. */
export function stripText({ part, bars }: Music, context: TextContext): string {
  const wanted = stripBars(part, bars)
  const rhythms = new Map<string, number[]>()
  for (const { bar, stands } of wanted) {
    const rhythm = heardRhythm(context.lesson, bar)
    rhythms.set(rhythm, [...(rhythms.get(rhythm) ?? []), ...stands])
  }
  const help = rhythmHelp(
    wanted.map(({ bar }) => [bar, { fromTicks: 0, toTicks: bar.length }] as const),
    context,
  )
  return [
    ...help,
    ...[...rhythms].map(([rhythm, alike]) => `${context.words.barList(alike.toSorted((a, b) => a - b))}. ${rhythm}`),
  ].join('\n')
}

/** How to read the rhythms, once a lesson. */
function rhythmHelp(
  shown: readonly (readonly [Bar, { readonly fromTicks: number; readonly toTicks: number }])[],
  { lesson, said, text }: TextContext,
): readonly string[] {
  if (said.has('rhythm') || shown.length === 0) return []
  said.add('rhythm')
  const slots = lesson.parts.flatMap((part) =>
    part.bars.flatMap((bar) => rhythmOf(bar, { fromTicks: 0, toTicks: bar.length })),
  )
  return [text.rhythmHelp(new Set(slots.flatMap(rhythmWord)))]
}

function rhythmWord({ sound }: RhythmSlot): readonly RhythmWord[] {
  switch (sound.kind) {
    case 'strike':
      return []
    case 'unstruck':
      return [sound.technique]
    default:
      return [sound.kind]
  }
}
