import type { BarRange, Lesson, Part, Shape, Ticks } from '@barwise/parser'
import type { Card } from './cards.ts'
import { type Damping, dampingOf } from './damping.ts'
import type { Instruction, Item } from './instruction.ts'
import { describeShape } from './speak/describe-shape.ts'
import { catalogueFor } from './speak/languages.ts'
import { openMessages } from './speak/messages.ts'
import { plain, plainText, type RichText, tidy } from './speak/rich-text.ts'
import { type Said, speakOver, speakRest, speakScratch, speakStrike, speakUnstruck } from './speak/sentence.ts'
import { speakForm, speakHead, speakSame, speakTitle } from './speak/speak-card.ts'
import { type Fullness, openVoice, spokenShapeName, type Voice } from './speak/voice.ts'
import { tellPart } from './tell-part.ts'

/** A clause and the time it tells, so that it can be lit: ticks from the start of the bar. */
export interface StepClause {
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  /** `shape` describes a grip finger by finger, which a page that shows its grid need not print. */
  readonly kind: 'step' | 'shape' | 'remark'
  /** Whole sentences, closed by their own marks. */
  readonly text: RichText
}

/** What is said of a beat or of joined beats. `label` stands beside it: `1`, `2–3`, or the word for "or". */
export interface StepItem {
  readonly kind: Item['kind']
  readonly label: string
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly clauses: readonly StepClause[]
}

/** A card in words. Empty strings and lists where there is nothing to say. */
export interface StepCard extends Pick<Card, 'bar' | 'also' | 'as' | 'fromTicks' | 'toTicks'> {
  /** `Bar 1`. */
  readonly title: string
  /** `also bars 3, 5 and 7`. */
  readonly alsoText: string
  /** `As bar 1 to the end of beat 2, then:`. */
  readonly asText: string
  /** How the bar is counted, where that is not as at the head of the part. */
  readonly countText: RichText
  readonly tags: readonly string[]
  /** The rhythm to say aloud, a word for each slot, beats apart by a bar. */
  readonly rhythm: string
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
  readonly cards: readonly StepCard[]
  readonly lines: readonly StepLine[]
  /** The language spoken, and its word for `&`. */
  readonly language: string
  readonly andWord: string
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
    text: speakItems(speaker, items).flatMap((item, i) => [
      ...(i === 0 ? [] : [plain(' ')]),
      ...item.clauses.flatMap((clause) => clause.text),
    ]),
  }))
  return {
    form: speakForm(voice, telling.form),
    count: speakHead(voice, telling.counting),
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
  }
}

/** The words of a card without styles, one line a beat, as the alternative text of its figure. */
export function cardPlainText(card: StepCard, steps: Pick<PartSteps, 'andWord'>): string {
  const head = [card.title, card.alsoText].filter((text) => text !== '').join(', ')
  const lines = [`${head}.`, card.asText, plainText(card.countText, steps.andWord)]
  for (const item of card.items) {
    lines.push(`${item.label}: ${itemPlainText(item, steps)}`)
  }
  return lines.filter((line) => line !== '').join('\n')
}

/** The words of an item without styles. */
export function itemPlainText(item: StepItem, steps: Pick<PartSteps, 'andWord'>): string {
  return item.clauses.map((clause) => plainText(clause.text, steps.andWord)).join(' ')
}

interface Speaker {
  readonly voice: Voice
  readonly names: readonly string[]
  readonly andWord: string
  readonly damping: (shape: Shape) => Damping | null
}

function textOf(text: RichText): string {
  return text.map((piece) => piece.text).join('')
}

/** Speaks the items of a card. A sentence that would be said twice names its count, then its beat. */
function speakItems(speaker: Speaker, items: readonly Item[]): readonly StepItem[] {
  const { voice } = speaker
  const said: Said = { unstruck: false, swing: false, pressAgain: false, struck: false, last: null }
  const sentences = new Set<string>()
  return items.map((item, index) => {
    const clauses: StepClause[] = []
    const full: Fullness = item.to > item.from && item.kind !== 'remark' ? 2 : 0
    for (const told of item.instructions) {
      const kind = clauseKind(told.kind)
      const text = fresh(speaker, sentences, said, full, (said, fullness) => speak(speaker, told, said, fullness, item))
      said.last = told.kind
      if (text.length > 0) clauses.push({ fromTicks: told.fromTicks, toTicks: told.toTicks, kind, text })
    }
    const label = item.kind === 'or' ? textOf(voice.say('card.or')) : rangeText(voice, item.from, item.to)
    const spoken = item.kind === 'or' ? leadAlternative(speaker, item, items[index - 1], clauses) : clauses
    return { kind: item.kind, label, fromTicks: item.fromTicks, toTicks: item.toTicks, clauses: spoken }
  })
}

function clauseKind(told: Instruction['kind']): StepClause['kind'] {
  if (told === 'remark') return 'remark'
  return told === 'describe' || told === 'describe-like' ? 'shape' : 'step'
}

/** Numbers from and to, as one where they are the same. */
function rangeText(voice: Voice, from: number, to: number): string {
  return from === to ? String(from) : textOf(voice.say('range', { from: String(from), to: String(to) }))
}

/** Tries a sentence at its shortest, then with its count, then with its beat, until none of it has been said in the card. */
function fresh(
  speaker: Speaker,
  sentences: Set<string>,
  said: Said,
  from: Fullness,
  say: (said: Said, full: Fullness) => readonly RichText[],
): RichText {
  let spoken: readonly RichText[] = []
  let after: Said = said
  for (const full of [0, 1, 2] as const) {
    if (full < from) continue
    after = { ...said }
    spoken = say(after, full).map((sentence) => closed(speaker, sentence))
    if (spoken.every((sentence) => !sentences.has(textOf(sentence)))) break
  }
  Object.assign(said, after)
  for (const sentence of spoken) sentences.add(textOf(sentence))
  return spoken.flatMap((sentence, i) => (i === 0 ? sentence : [plain(' '), ...sentence]))
}

function speak(speaker: Speaker, told: Instruction, said: Said, full: Fullness, item: Item): readonly RichText[] {
  const { voice } = speaker
  switch (told.kind) {
    case 'describe':
    case 'describe-like':
      return describeShape(voice, told, {
        damping: speaker.damping(told.shape),
        named: full > 0 && item.from === item.to,
      })
    case 'strike':
      return speakStrike(voice, told, said, full)
    case 'unstruck':
      return speakUnstruck(voice, told, said, full)
    case 'scratch':
      return [speakScratch(voice, told, full)]
    case 'rest':
      return [speakRest(voice, told, full)]
    case 'over':
      return [speakOver(voice, told, said, full)]
    case 'as-beat': {
      const numbers = Array.from(
        { length: item.to - item.from + 1 },
        (_, i): RichText => [plain(String(item.from + i))],
      )
      const values = { n: numbers.length, beat: String(told.beat), list: voice.list(numbers) }
      return [voice.say(full === 1 || (full === 2 && item.from === item.to) ? 'as-beat.again' : 'as-beat', values)]
    }
    case 'remark':
      return [voice.say('remark', { text: raised(ended(told.text)) })]
  }
}

/** Closes a sentence: first letter raised unless it is a shape's name, a full stop unless the words bring their own end. */
function closed(speaker: Speaker, sentence: RichText): RichText {
  const pieces = tidy(sentence)
  const first = pieces[0]
  if (first === undefined) return pieces
  const named = startsWithName(speaker, first.text)
  const opened =
    named || first.style === 'count' ? pieces : [{ ...first, text: raised(first.text) }, ...pieces.slice(1)]
  const last = opened.at(-1)
  if (last === undefined || last.style === 'italic') return opened
  return tidy([...opened, plain('.')])
}

/** The first letter small again behind a colon, unless a shape's name stands there. */
function lowered(speaker: Speaker, text: RichText): RichText {
  const [first, ...rest] = text
  if (first === undefined || first.style !== 'plain' || startsWithName(speaker, first.text)) return text
  return [{ ...first, text: first.text.charAt(0).toLowerCase() + first.text.slice(1) }, ...rest]
}

function startsWithName(speaker: Speaker, text: string): boolean {
  return speaker.names.some((name) => text.startsWith(`${name} `) || text.startsWith(`${name}:`))
}

function raised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** A remark with a mark at its end. */
function ended(text: string): string {
  return /[.!?…:;]["”’)]*$/.test(text) ? text : `${text}.`
}

/** Leads an alternative in: "Easier:" where it asks for fewer or plainer strokes, with its beat where it is not told right above. */
function leadAlternative(
  speaker: Speaker,
  item: Item,
  before: Item | undefined,
  clauses: readonly StepClause[],
): readonly StepClause[] {
  const first = clauses[0]
  if (first === undefined) return clauses
  const own = before === undefined || before.from !== item.from || before.to !== item.to
  const easier = before !== undefined && load(item) < load(before)
  const key = `alternative.${easier ? 'easier' : 'other'}${own ? '-beat' : ''}`
  const beat = rangeText(speaker.voice, item.from, item.to)
  const text = tidy(
    speaker.voice.say(key, { sentence: lowered(speaker, first.text), beat, n: item.to - item.from + 1 }),
  )
  return [{ ...first, text }, ...clauses.slice(1)]
}

/** A rough measure of how much a player has to do: a stroke counts one, a sound of the fretting hand two. */
function load(item: Item): number {
  return item.instructions.reduce((sum, told) => {
    if (told.kind === 'strike' || told.kind === 'scratch') return sum + told.strokes.length
    return sum + (told.kind === 'unstruck' ? 2 : 0)
  }, 0)
}
