import type { Bar, Lesson, Part, Repeat } from '@barwise/parser'
import { type Card, findCards, toldStretch } from './cards.ts'
import { type ChordPlace, chordsToSay } from './chords-to-say.ts'
import { beatAt, countedGroups } from './count-name.ts'
import { type Counting, commonCut, countingOf, headCounting, sameCount, sameStroke } from './counting.ts'
import { describe, emptyMemory, type ShapeMemory } from './hand.ts'
import type { Instruction, Item } from './instruction.ts'
import { everyStrokeRings } from './lasting.ts'
import { restsByBeat } from './rests-by-beat.ts'
import { type RhythmSlot, rhythmOf } from './rhythm.ts'
import { findSameBars, type SameBars } from './same-bars.ts'
import { type Tag, tagsOf } from './tags.ts'
import { alternativesIn, tellBar } from './tell-bar.ts'
import type { Telling } from './telling.ts'

/** A card with what is said in it. */
export interface CardTelling extends Card {
  readonly counting: Counting
  /** Whether the count, the way of striking and the swing differ from the bar it is told by or from the part, so that the card must say it. */
  readonly sayCounting: boolean
  readonly sayStroke: boolean
  readonly sayFeel: boolean
  /** Whether every stroke told rings on. */
  readonly everyRing: boolean
  /** The cut that every beat told has, null when there is none. */
  readonly everyBeatIn: number | null
  /** Chord symbols to be said, each where it begins: those that no shape's name says. */
  readonly chords: readonly ChordPlace[]
  readonly tags: readonly Tag[]
  readonly rhythm: readonly RhythmSlot[]
  readonly items: readonly Item[]
}

/** A bar without a card that has remarks or alternatives of its own. */
export interface ExtraTelling {
  readonly bar: number
  readonly items: readonly Item[]
}

/** The form of a part. */
export interface Form {
  readonly bars: number
  readonly different: number
  readonly pickup: boolean
  readonly sections: readonly { readonly name: string; readonly from: number; readonly to: number }[]
  readonly repeats: readonly Repeat[]
}

/** Everything that is said of a part, as data. */
export interface PartTelling {
  readonly form: Form
  readonly counting: Counting
  readonly cards: readonly CardTelling[]
  readonly same: readonly SameBars[]
  readonly extras: readonly ExtraTelling[]
}

/** Tells a part: which bars get a card, and what is said in each, in the order in which a reader meets them. */
export function tellPart(lesson: Lesson, written: Part): PartTelling {
  const part = restsByBeat(written)
  const memory = emptyMemory(lesson.shapes)
  const numbered = part.bars.filter((bar) => bar.number > 0)
  const counting = headCounting(numbered.length === 0 ? part.bars : numbered)
  const cards: CardTelling[] = []
  for (const card of findCards(lesson, part)) {
    const bar = part.bars.find((one) => one.number === card.bar)
    const model = cards.find((one) => one.bar === card.as?.bar)?.counting ?? counting
    if (bar !== undefined) cards.push(tellCard(part, counted(bar), card, { memory, head: counting, model }))
  }
  const extras = part.bars
    .filter((bar) => bar.sameAs !== null && bar.remarks.length + bar.alternatives.length > 0)
    .map(counted)
    .map((bar) => {
      const everyBeatIn = cards.find((card) => card.bar === bar.sameAs)?.everyBeatIn ?? null
      const telling: Telling = { part, bar, memory, everyBeatIn, everyRing: false }
      return { bar: bar.number, items: withRemarks(telling, alternativesIn(telling, 0, bar.length)) }
    })
  return { form: formOf(part, numbered), counting, cards, same: findSameBars(part), extras }
}

/** A bar with only those cuts that it is counted by. */
function counted(bar: Bar): Bar {
  const alternatives = bar.alternatives.map((one) => ({ ...one, groups: countedGroups(one.groups, one.events) }))
  return { ...bar, groups: countedGroups(bar.groups, bar.events), alternatives }
}

interface CardContext {
  readonly memory: ShapeMemory
  /** How the part is counted. */
  readonly head: Counting
  /** How the bar that this one is told by is counted, else the part. */
  readonly model: Counting
}

function tellCard(part: Part, bar: Bar, card: Card, { memory, head, model }: CardContext): CardTelling {
  const stretch = toldStretch(card)
  const told = stretch.toTicks > stretch.fromTicks
  const everyBeatIn = commonCut(bar, stretch, head.cut)
  const counting = told ? countingOf(bar, everyBeatIn) : model
  const everyRing = everyStrokeRings(bar, stretch)
  const telling: Telling = { part, bar, memory, everyBeatIn, everyRing }
  const shapes = shapesExchanged(card, bar, memory)
  const beats = tellBar(telling, stretch.fromTicks, stretch.toTicks)
  return {
    ...card,
    counting,
    sayCounting: !sameCount(counting, model),
    sayStroke: !sameStroke(counting, model),
    sayFeel: counting.feel !== model.feel,
    everyBeatIn,
    everyRing,
    chords: chordsToSay(part, bar, card, memory.shapes),
    tags: tagsOf(bar, card),
    rhythm: rhythmOf(bar, card),
    items: [...shapes, ...withRemarks(telling, beats)],
  }
}

/** Describes the shapes that take the place of others where they have not been described before. */
function shapesExchanged(card: Card, bar: Bar, memory: ShapeMemory): readonly Item[] {
  const ticks = { fromTicks: 0, toTicks: bar.length }
  const instructions = (card.as?.exchanges ?? []).flatMap(({ shape: name }) => {
    const shape = memory.shapes.get(name)
    return shape === undefined || memory.described.includes(name) ? [] : [describe(shape, memory, ticks)]
  })
  if (instructions.length === 0) return []
  return [{ kind: 'shapes', from: 1, to: beatAt(bar, bar.length - 1), ...ticks, instructions }]
}

/** Adds the teacher's remarks to the beats they belong to. */
function withRemarks(telling: Telling, beats: readonly Item[]): readonly Item[] {
  const { bar } = telling
  const items = [...beats]
  const place = (at: number): number => items.findLastIndex((item) => item.fromTicks <= at)
  for (const remark of bar.remarks) {
    const told: Instruction = {
      kind: 'remark',
      fromTicks: remark.at ?? 0,
      toTicks: remark.at === null ? bar.length : remark.at + bar.beatTicks,
      text: remark.text,
    }
    const at = remark.at
    const index = items.findLastIndex(
      (item) => item.kind === 'beat' && (at === null || (item.fromTicks <= at && at < item.toTicks)),
    )
    const item = items[index]
    if (item !== undefined && item.instructions[0]?.kind !== 'as-beat') {
      items[index] = { ...item, instructions: [...item.instructions, told] }
    } else if (at !== null) {
      const beat = beatAt(bar, at)
      const own: Item = {
        kind: 'remark',
        from: beat,
        to: beat,
        fromTicks: at,
        toTicks: at + bar.beatTicks,
        instructions: [told],
      }
      items.splice(place(at) + 1, 0, own)
    } else {
      items.push({
        kind: 'remark',
        from: beatAt(bar, 0),
        to: beatAt(bar, bar.length - 1),
        fromTicks: 0,
        toTicks: bar.length,
        instructions: [told],
      })
    }
  }
  return items
}

function formOf(part: Part, numbered: readonly Bar[]): Form {
  const starts = numbered.filter((bar) => bar.section !== null)
  const last = numbered.at(-1)?.number ?? 0
  return {
    bars: numbered.length,
    different: numbered.filter((bar) => bar.sameAs === null).length,
    pickup: part.bars.some((bar) => bar.number === 0),
    sections: starts.map((bar, i) => ({
      name: bar.section ?? '',
      from: bar.number,
      to: (starts[i + 1]?.number ?? last + 1) - 1,
    })),
    repeats: part.repeats,
  }
}
