import type { Shape, Ticks } from '@barwise/parser'
import type { Damping } from '../damping.ts'
import type { Instruction, Item } from '../instruction.ts'
import { describeShape } from './describe-shape.ts'
import { type CountWords, plain, plainText, type RichText, textOf, tidy } from './rich-text.ts'
import type { Kind, Said } from './said.ts'
import { leadAlternative } from './speak-alternative.ts'
import { speakOver } from './speak-over.ts'
import { speakRest, speakScratch } from './speak-scratch.ts'
import { speakStrike } from './speak-strike.ts'
import { speakUnstruck } from './speak-unstruck.ts'
import type { StepClause } from './step-clause.ts'
import { type Fullness, rangeText, type Voice } from './voice.ts'

/** What is said of a beat or of joined beats. `label` stands beside it: `1`, `2–3`, the word for "or", empty before all beats. */
export interface StepItem {
  readonly kind: Item['kind']
  readonly label: string
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly clauses: readonly StepClause[]
}

/** Who speaks of a part: the voice, the names of its shapes, and how fingers damp. */
export interface Speaker {
  readonly voice: Voice
  readonly names: readonly string[]
  readonly andWord: string
  readonly damping: (shape: Shape) => Damping | null
}

/** Speaks the items of a card. A sentence that would be said twice names its count, then its beat. */
export function speakItems(speaker: Speaker, items: readonly Item[]): readonly StepItem[] {
  const { voice } = speaker
  const said: Said = { unstruck: false, swing: false, struck: false }
  const sentences = new Set<string>()
  return items.map((item, index) => {
    const clauses: StepClause[] = []
    const full: Fullness = item.to > item.from && (item.kind === 'beat' || item.kind === 'or') ? 2 : 0
    for (const told of item.instructions) {
      const kind = clauseKind(told.kind)
      const text = fresh(speaker, { sentences, said, from: full }, (after, how) =>
        speak(speaker, told, after, how, item),
      )
      if (text.length > 0) clauses.push({ fromTicks: told.fromTicks, toTicks: told.toTicks, kind, text })
    }
    const label = labelOf(voice, item)
    const spoken =
      item.kind === 'or'
        ? leadAlternative(speaker.voice, item, {
            before: items[index - 1],
            clauses,
            named: (text) => startsWithName(speaker, text),
            sentences,
          })
        : clauses
    return { kind: item.kind, label, fromTicks: item.fromTicks, toTicks: item.toTicks, clauses: spoken }
  })
}

function labelOf(voice: Voice, item: Item): string {
  if (item.kind === 'shapes') return ''
  return item.kind === 'or' ? textOf(voice.say('card.or')) : rangeText(voice, item.from, item.to)
}

function clauseKind(told: Instruction['kind']): StepClause['kind'] {
  if (told === 'remark') return 'remark'
  return told === 'describe' || told === 'describe-like' ? 'shape' : 'step'
}

/** How fully something is told, and whether it must be told otherwise than before because the same was said in the card. */
interface Telling {
  readonly full: Fullness
  readonly insist: boolean
}

/** How something is told, and which of its sentences were said in the card before. */
interface Manner extends Telling {
  readonly wasSaid: (sentence: RichText) => boolean
}

/** The ways to tell something, from the shortest; where beats are joined only one names the beat. */
function waysFrom(full: Fullness): readonly Telling[] {
  const ways = ([0, 1, 2] as const).filter((one) => one >= full).map((one, i) => ({ full: one, insist: i > 0 }))
  return full < 2 ? ways : [...ways, { full, insist: true }]
}

interface Card {
  readonly sentences: Set<string>
  readonly said: Said
  readonly from: Fullness
}

/** Tries a sentence at its shortest, then with its count, then with its beat, until none of it has been said in the card. */
function fresh(
  speaker: Speaker,
  { sentences, said, from }: Card,
  say: (said: Said, how: Manner) => readonly RichText[],
): RichText {
  const wasSaid = (sentence: RichText): boolean => sentences.has(textOf(closed(speaker, sentence)))
  let spoken: readonly RichText[] = []
  let after: Said = said
  for (const way of waysFrom(from)) {
    after = { ...said }
    spoken = say(after, { ...way, wasSaid }).map((sentence) => closed(speaker, sentence))
    if (spoken.every((sentence) => !sentences.has(textOf(sentence)))) break
  }
  Object.assign(said, after)
  for (const sentence of spoken) sentences.add(textOf(sentence))
  return spoken.flatMap((sentence, i) => (i === 0 ? sentence : [plain(' '), ...sentence]))
}

function speak(speaker: Speaker, told: Instruction, said: Said, how: Manner, item: Item): readonly RichText[] {
  const { voice } = speaker
  const { full, insist } = how
  switch (told.kind) {
    case 'describe':
    case 'describe-like':
      return speakDescription(speaker, told, how)
    case 'explain-ease':
      return [voice.say('ease.means')]
    case 'strike':
      return speakStrike(voice, told, said, how)
    case 'unstruck':
      return speakUnstruck(voice, told, said, how)
    case 'scratch':
      return speakScratch(voice, told, how)
    case 'rest':
      return speakRest(voice, told, full)
    case 'over':
      return [speakOver(voice, told, said, full)]
    case 'as-beat':
      return [speakAsBeat(voice, told, item, insist)]
    case 'remark':
      return [voice.say('remark', { text: raised(ended(quotedInside(voice, told.text))) })]
  }
}

/** Describes a shape; of the sentences that were said of another shape in the card, each with this one's name. */
function speakDescription(
  { voice, damping }: Speaker,
  told: Kind<'describe' | 'describe-like'>,
  { insist, wasSaid }: Manner,
): readonly RichText[] {
  const plainly = describeShape(voice, told, { damping: damping(told.shape), named: false })
  if (!insist) return plainly
  const named = describeShape(voice, told, { damping: damping(told.shape), named: true })
  return plainly.map((sentence, i) => (wasSaid(sentence) ? (named[i] ?? sentence) : sentence))
}

/** Beats that are earlier ones again: one or each as another, or several as those in their order. */
function speakAsBeat(voice: Voice, told: Kind<'as-beat'>, item: Item, insist: boolean): RichText {
  const again = insist ? '.again' : ''
  const list = voice.beats(item.from, item.to)
  const n = item.to - item.from + 1
  if (told.through === told.beat) return voice.say(`as-beat${again}`, { n, beat: String(told.beat), list })
  const k = n / (told.through - told.beat + 1)
  return voice.say(`as-beats${again}`, { beats: voice.beats(told.beat, told.through), list, k, times: voice.times(k) })
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

function startsWithName(speaker: Speaker, text: string): boolean {
  return speaker.names.some((name) => text.startsWith(name) && /^[ :,;]/.test(text.slice(name.length)))
}

function raised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** A remark with what it quotes in the marks of a quotation inside another. */
function quotedInside(voice: Voice, text: string): string {
  return text.replace(/["“„]([^"“”„]*)["”“]/g, (_, words: string) => textOf(voice.say('remark.inside', { words })))
}

/** A remark with a mark at its end. */
function ended(text: string): string {
  return /[.!?…:;]["”’)]*$/.test(text) ? text : `${text}.`
}

/** The words of an item without styles. */
export function itemPlainText(item: StepItem, steps: CountWords): string {
  return item.clauses.map((clause) => plainText(clause.text, steps.andWord, steps.countMarks)).join(' ')
}
