import type { BarRange, Lesson, Part } from '@barwise/parser'
import type { Card } from './cards.ts'
import { type Damping, dampingOf } from './damping.ts'
import { catalogueFor } from './speak/languages.ts'
import { openMessages } from './speak/messages.ts'
import { type CountMarks, type CountWords, plain, plainText, type RichText, textOf } from './speak/rich-text.ts'
import { type CardTitle, speakForm, speakHead, speakSame, speakTitle } from './speak/speak-card.ts'
import { itemPlainText, type Speaker, type StepItem, speakItems } from './speak/speak-items.ts'
import { openVoice, spokenShapeName } from './speak/voice.ts'
import { tellPart } from './tell-part.ts'

/** A card in words. Empty strings and lists where there is nothing to say. */
export interface StepCard extends CardTitle, Pick<Card, 'bar' | 'also' | 'as' | 'fromTicks' | 'toTicks'> {
  readonly items: readonly StepItem[]
}

/** Bars without a card in one line: `Bars 3, 5 and 7` + `are bar 1.` */
export interface StepLine {
  /** Single bars that are another again, a run that repeats a run, or what a copied bar adds of its own. */
  readonly kind: 'again' | 'run' | 'extra'
  readonly bars: BarRange
  readonly lead: string
  readonly text: RichText
}

/** The steps of a part in one language. */
export interface PartSteps {
  /** The form in sentences: "Eight bars, four different ones, after a pickup." */
  readonly form: RichText
  /** How it is counted and struck. */
  readonly count: RichText
  /** Whether the count differs from what the grid says, so that counts by slot do not say it all. */
  readonly countOffGrid: boolean
  readonly cards: readonly StepCard[]
  readonly lines: readonly StepLine[]
  /** The language spoken, and its word for `&`. */
  readonly language: string
  readonly andWord: string
  /** What a count by letter stands between in plain text. */
  readonly countMarks: CountMarks
}

/** How the steps are spoken. */
export interface StepOptions {
  /** A BCP 47 tag; the lesson's own when left out. */
  readonly language?: string
  /** Strings by name or by number; the lesson's own setting when left out. */
  readonly strings?: 'names' | 'numbers'
  /** By shape, which finger keeps which string quiet; worked out from the fingers when left out. */
  readonly damping?: ReadonlyMap<string, Damping>
}

/** The steps of a part: which bars are told, and the sentences for each, beat by beat. */
export function stepsOfPart(lesson: Lesson, part: Part, options: StepOptions = {}): PartSteps {
  const { language, messages } = catalogueFor(options.language ?? lesson.settings.language)
  const voice = openVoice(
    openMessages(language, messages),
    lesson.instrument,
    options.strings ?? lesson.settings.strings,
  )
  const telling = tellPart(lesson, part)
  const names = lesson.shapes.map((shape) => spokenShapeName(shape.name))
  const andWord = messages.and ?? '&'
  const speaker: Speaker = {
    voice,
    names,
    andWord,
    damping: (shape) => options.damping?.get(shape.name) ?? dampingOf(shape, lesson.instrument),
  }
  const cards = telling.cards.map((card) => ({
    bar: card.bar,
    also: card.also,
    as: card.as,
    fromTicks: card.fromTicks,
    toTicks: card.toTicks,
    ...speakTitle(voice, card),
    items: speakItems(speaker, card.items),
  }))
  const extras = telling.extras.map(({ bar, items }) => ({
    kind: 'extra' as const,
    bars: { from: bar, to: bar },
    lead: `${textOf(voice.say('card.bar', { bar: String(bar) }))}:`,
    text: speakItems(speaker, items)
      .flatMap((item) => item.clauses)
      .flatMap((clause, i) => (i === 0 ? clause.text : [plain(' '), ...clause.text])),
  }))
  return {
    form: speakForm(voice, telling.form),
    count: speakHead(voice, telling.counting),
    countOffGrid: telling.counting.cut !== null,
    cards,
    lines: [
      ...telling.same.map((same) => ({
        kind: same.kind === 'run' ? ('run' as const) : ('again' as const),
        ...speakSame(voice, same),
      })),
      ...extras,
    ],
    language,
    andWord,
    countMarks: [messages['count.open'] ?? '', messages['count.close'] ?? ''],
  }
}

/** The words of a card without styles, one line a beat, as the alternative text of its figure. */
export function cardPlainText(card: StepCard, steps: CountWords): string {
  const head = [card.title, card.alsoText].filter((text) => text !== '').join(', ')
  const lines = [
    `${head}.`,
    card.asText,
    plainText(card.chordText, steps.andWord, steps.countMarks),
    plainText(card.countText, steps.andWord, steps.countMarks),
  ]
  for (const item of card.items) {
    lines.push(`${item.label === '' ? '' : `${item.label}: `}${itemPlainText(item, steps)}`)
  }
  return lines
    .filter((line) => line !== '')
    .join('\n')
    .replaceAll('\u00a0', ' ')
}
