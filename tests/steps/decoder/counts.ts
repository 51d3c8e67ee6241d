import type { Count } from './decoded.ts'
import { toList, toNumber, toOrdinal } from './spoken-numbers.ts'

/** Reads how a part or a bar is counted; null where nothing is said of it. */
export function readCount(text: string): Omit<Count, 'style'> | null {
  const match = text.match(/Count (?:this bar of )?(\d+)\/(\d+) as ([^.]*)\./)
  if (match === null) return null
  const row = match[3]!.split(' ')
  const beats = row.filter((word) => /^\d/.test(word)).length
  const barTicks = (Number(match[1]) * 4 * 3360) / Number(match[2])
  const between = text.match(/Each count has room for (\w+) even strokes\./)?.[1]
  const split = text.match(/Each beat splits into (\w+) even parts\./)?.[1]
  const slots =
    split === undefined ? (row.length / beats) * (between === undefined ? 1 : toNumber(between)) : toNumber(split)
  return { beats, slots, beatTicks: barTicks / beats }
}

/** Reads how a part or a bar is struck; null where nothing is said of it. */
export function readStyle(text: string): Count['style'] | null {
  if (text.includes('Every stroke goes down.')) return 'down'
  if (text.includes('strumming hand pluck the strings.')) return 'pluck'
  return /The strumming hand (?:swings down and up|goes down on every count and back up in between)\./.test(text)
    ? 'alternate'
    : null
}

/** Equal slots that stand together, in ticks from the start of the bar. */
export interface Frame {
  readonly at: number
  readonly length: number
  readonly parts: number
}

/** What decides where a place lies: the count of the bar, the cuts told so far, and the beats being told. */
export interface Counted {
  readonly count: Count
  readonly firstBeat: number
  readonly cuts: readonly Frame[]
  /** The cut told last. */
  readonly cut: Frame | null
  readonly item: { readonly from: number; readonly to: number }
}

/** The ticks at which a beat starts. */
export function beatStart({ count, firstBeat }: Counted, beat: number): number {
  return (beat - firstBeat - 1) * count.beatTicks
}

/** The beat that holds a tick. */
export function beatOf({ count, firstBeat }: Counted, at: number): number {
  return firstBeat + Math.floor(at / count.beatTicks) + 1
}

/** Slots of a beat: as cut, or as it is counted. */
export function beatFrame(counted: Counted, beat: number): Frame {
  const at = beatStart(counted, beat)
  const length = counted.count.beatTicks
  return (
    counted.cuts.find((one) => one.at === at && one.length === length) ?? { at, length, parts: counted.count.slots }
  )
}

/** The innermost slots that hold a tick. */
export function frameAt(counted: Counted, at: number): Frame {
  const holding = counted.cuts.filter((cut) => at >= cut.at && at < cut.at + cut.length)
  const inner = holding.reduce<Frame | null>(
    (best, cut) => (best === null || cut.length <= best.length ? cut : best),
    null,
  )
  return inner ?? beatFrame(counted, beatOf(counted, at))
}

const NAMES: Readonly<Record<number, readonly string[]>> = {
  1: ['number'],
  2: ['number', 'and'],
  3: ['number', 'and', 'a'],
  4: ['number', 'e', 'and', 'a'],
}

/** The ticks of a place: `on ‘a’ of 2`, `on the third`. */
export function ticksOf(counted: Counted, place: string): number {
  const frame = frameOf(counted, place)
  const slot = frame.length / frame.parts
  const ordinal = place.match(/the ([a-z]+|\d+th)(?: of the outer \w+| of \w+ in beat \d+| in beat \d+| part)?$/)?.[1]
  if (ordinal !== undefined) return frame.at + (toOrdinal(ordinal) - 1) * slot
  const name = place.match(/‘(\w+)’/)?.[1] ?? 'number'
  const late = place.startsWith('just after')
  const direct = NAMES[frame.parts]?.indexOf(name) ?? -1
  if (direct >= 0 && !late) return frame.at + direct * slot
  if (name === 'number' && !late) return frame.at
  const half = NAMES[frame.parts / 2]!.indexOf(name)
  return frame.at + (half * 2 + (late ? 1 : 0)) * slot
}

/** The slots among which a place is one. */
export function frameOf(counted: Counted, place: string): Frame {
  const { cuts, cut, item } = counted
  const ordinal = place.match(
    /the (?:[a-z]+|\d+th)(?: of the outer (\w+)| of (\w+) in beat (\d+)| in beat (\d+)|( part))?$/,
  )
  if (ordinal === null) {
    const beat = place.match(/(?:of|in beat|on|after) (\d+)$/)?.[1]
    return beatFrame(counted, beat === undefined ? item.from : Number(beat))
  }
  const [, outer, own, ownBeat, beat, part] = ordinal
  if (part !== undefined) return cuts.findLast((one) => one.length > counted.count.beatTicks)!
  if (outer !== undefined) {
    const from = beatStart(counted, item.from)
    const wide = cuts.filter((one) => one.at >= from && one.parts === toNumber(outer))
    return [...wide].sort((a, b) => b.length - a.length)[0]!
  }
  if (beat !== undefined) return beatFrame(counted, Number(beat))
  if (own === undefined) return cut ?? beatFrame(counted, item.from)
  const inBeat = cuts.findLast((one) => one.parts === toNumber(own) && beatOf(counted, one.at) === Number(ownBeat))
  return inBeat ?? beatFrame(counted, Number(ownBeat))
}

/** Reads a sentence that cuts a beat, beats or places into equal parts; null when it is none. */
export function readCut(counted: Counted, sentence: string): Frame | null {
  const match = sentence.match(
    /^split (?:the beat|beat (\d+)|beats (.+?)|the time (?:of )?(.+?)) into (\w+) even parts(?:: .*)?$/i,
  )
  if (match === null) return null
  const parts = toNumber(match[4]!)
  const { beatTicks } = counted.count
  if (match[2] !== undefined) {
    const beats = toList(match[2])
    return { at: beatStart(counted, beats[0]!), length: beats.length * beatTicks, parts }
  }
  if (match[3] === undefined) {
    const beat = match[1] === undefined ? counted.item.from : Number(match[1])
    return { at: beatStart(counted, beat), length: beatTicks, parts }
  }
  const range = match[3].match(/^from (.+) through (.+)$/)
  if (range !== null) {
    const [first, last] = [toPlace(range[1]!), toPlace(range[2]!)]
    const frame = frameOf(counted, last)
    const at = ticksOf(counted, first)
    return { at, length: ticksOf(counted, last) + frame.length / frame.parts - at, parts }
  }
  const places = match[3].split(/, | and (?=the|‘|\d|on|just)/).map(toPlace)
  const frame = frameOf(counted, places[0]!)
  return { at: ticksOf(counted, places[0]!), length: places.length * (frame.length / frame.parts), parts }
}

/** A count as the place it stands for: `‘e’` is `on ‘e’`. */
function toPlace(count: string): string {
  return count.replace(/^(?=the|‘|\d)/, 'on ')
}
