import type { Bar, Lesson, Metre, Part, Repeat, StrokeStyle } from '@barwise/parser'
import { type Card, findCards } from './cards.ts'
import { beatAt, countedGroups } from './count-name.ts'
import type { ShapeMemory } from './hand.ts'
import type { Instruction, Item } from './instruction.ts'
import { type RhythmSlot, rhythmOf } from './rhythm.ts'
import { findSameBars, type SameBars } from './same-bars.ts'
import { type Tag, tagsOf } from './tags.ts'
import { alternativesIn, tellBar } from './tell-bar.ts'
import type { Telling } from './telling.ts'

/** How a bar is counted: what a reader must know before its first count. */
export interface Counting {
  readonly metre: Metre
  readonly beats: { readonly from: number; readonly to: number }
  /** Slots of the hand in a beat. */
  readonly slots: number
  readonly stroke: StrokeStyle
}

/** A card with what is said in it. */
export interface CardTelling extends Card {
  readonly counting: Counting
  /** Whether the counting differs from that at the head of the part, so that the card must say it. */
  readonly sayCounting: boolean
  /** Whether every stroke shown rings on. */
  readonly everyRing: boolean
  /** The cut that every beat shown has, null when there is none. */
  readonly everyBeatIn: number | null
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
export function tellPart(lesson: Lesson, part: Part): PartTelling {
  const memory: ShapeMemory = { shapes: new Map(lesson.shapes.map((shape) => [shape.name, shape])), described: [] }
  const numbered = part.bars.filter((bar) => bar.number > 0)
  const counting = countingOf(numbered[0] ?? part.bars[0])
  const cards: CardTelling[] = []
  for (const card of findCards(part)) {
    const bar = part.bars.find((one) => one.number === card.bar)
    if (bar !== undefined) cards.push(tellCard(part, counted(bar), card, { memory, counting }))
  }
  const extras = part.bars
    .filter((bar) => bar.sameAs !== null && bar.remarks.length + bar.alternatives.length > 0)
    .map(counted)
    .map((bar) => {
      const telling: Telling = { part, bar, memory, everyBeatIn: null, everyRing: false }
      return { bar: bar.number, items: withRemarks(telling, alternativesIn(telling, 0, bar.length)) }
    })
  return { form: formOf(part, numbered), counting, cards, same: findSameBars(part), extras }
}

/** A bar with only those cuts that it is counted by. */
function counted(bar: Bar): Bar {
  const alternatives = bar.alternatives.map((one) => ({ ...one, groups: countedGroups(one.groups, one.events) }))
  return { ...bar, groups: countedGroups(bar.groups, bar.events), alternatives }
}

function tellCard(
  part: Part,
  bar: Bar,
  card: Card,
  context: { readonly memory: ShapeMemory; readonly counting: Counting },
): CardTelling {
  const counting = countingOf(bar)
  const head = context.counting
  const sayCounting =
    counting.metre.count !== head.metre.count ||
    counting.metre.unit !== head.metre.unit ||
    counting.slots !== head.slots ||
    counting.stroke !== head.stroke ||
    counting.beats.to !== head.beats.to
  const everyBeatIn = commonCut(bar, card)
  const everyRing = allRing(bar, card)
  const telling = { part, bar, memory: context.memory, everyBeatIn, everyRing }
  const beats = tellBar(telling, card.fromTicks, card.toTicks)
  return {
    ...card,
    counting,
    sayCounting,
    everyBeatIn,
    everyRing,
    tags: tagsOf(bar, card),
    rhythm: rhythmOf(bar, card),
    items: withRemarks(telling, beats),
  }
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

function countingOf(bar: Bar | undefined): Counting {
  if (bar === undefined) {
    return { metre: { count: 4, unit: 4 }, beats: { from: 1, to: 4 }, slots: 4, stroke: 'alternate' }
  }
  const slotTicks = (4 * 3360) / bar.grid
  return {
    metre: bar.metre,
    beats: { from: 1, to: beatAt(bar, bar.length - 1) },
    slots: bar.beatTicks / slotTicks,
    stroke: bar.stroke,
  }
}

/** Whether a card shows three strokes at least, all struck and all marked to ring. */
function allRing(bar: Bar, card: Card): boolean {
  const shown = bar.events.filter((event) => event.at >= card.fromTicks && event.at < card.toTicks)
  const strikes = shown.flatMap((event) => (event.kind === 'strike' ? [event] : []))
  return strikes.length > 2 && strikes.every((strike) => strike.stroke !== null && strike.marks.includes('ring'))
}

/** The number of parts when every beat shown, two at least, is cut alike; null otherwise. */
function commonCut(bar: Bar, card: Card): number | null {
  const beats = Math.ceil((card.toTicks - card.fromTicks) / bar.beatTicks)
  const cuts = bar.groups.filter((group) => group.at >= card.fromTicks && group.at < card.toTicks)
  const parts = cuts[0]?.parts
  const alike = cuts.every((cut) => cut.parts === parts && cut.length === bar.beatTicks && cut.at % bar.beatTicks === 0)
  return bar.alternatives.length === 0 && parts !== undefined && beats > 1 && cuts.length === beats && alike
    ? parts
    : null
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
