import { type AsBar, exchange, readAsBar } from './as-bar.ts'
import { beatStart, readCount, readStyle } from './counts.ts'
import { type Decoded, restAt } from './decoded.ts'
import type { Reading } from './reading.ts'
import { readSentence } from './sentence.ts'

/** Reads a card: a line each for its name, the bar it is told by, its chords, its count, its shapes, its beats, its rhythm. */
export function readCard(reading: Reading, lines: readonly string[]): void {
  const number = lines[0]!.startsWith('Pickup') ? 0 : Number(lines[0]!.match(/\d+/)![0])
  const model = reading.bars.get(Number(lines[1]?.match(/^As bar (\d+)/)?.[1]))
  reading.count = model?.count ?? reading.head
  Object.assign(reading, { everyRing: false, firstBeat: 0, cuts: [] })
  const items: [string, string][] = []
  let as: AsBar | null = null
  for (const line of lines.slice(1)) {
    const item = line.match(/^(\d+(?:–\d+)?|or): (.*)$/)
    if (item !== null) items.push([item[1]!, item[2]!])
    else if (line.startsWith('As bar')) as = readAsBar(line, reading.count.beats)
    else if (!isHead(reading, line) && !/^(Say|Chords?):/.test(line)) readShapes(reading, line)
  }
  const { beats, beatTicks } = reading.count
  if (number === 0) reading.firstBeat = Number(items[0]![0].split('–')[0]) - 1
  const length = (beats - reading.firstBeat) * beatTicks
  reading.bar = { number, length, count: reading.count, events: [], alternatives: [] }
  const source = as === null ? [] : reading.bars.get(as.bar)!.events
  const from = as === null ? 0 : ((as.told[0] ?? beats + 1) - 1) * beatTicks
  const to = as === null ? length : (as.told.at(-1) ?? beats) * beatTicks
  const other = source
    .filter((event) => event.at < from || event.at >= to)
    .map((event) => (as === null ? event : exchange(event, as.exchanged, reading.shapes)))
  const after = other.filter((event) => event.at >= to)
  reading.bar.events.push(...other.filter((event) => event.at < from))
  readItems(reading, items, after)
  reading.bar.events.push(...after)
  if (number === 0 && reading.bar.events[0]?.at !== 0) reading.bar.events.unshift(restAt(0))
  reading.bars.set(number, reading.bar)
}

/** Reads a line on how the bar is counted and struck; false when it is none. */
function isHead(reading: Reading, line: string): boolean {
  const count = readCount(line)
  const style = readStyle(line)
  if (count !== null) reading.count = { ...reading.count, ...count }
  if (style !== null) reading.count = { ...reading.count, style }
  const rings = line.includes('Let every stroke ring.')
  if (rings) reading.everyRing = true
  return count !== null || style !== null || rings
}

/** Reads the line that describes the shapes a card exchanges. */
function readShapes(reading: Reading, line: string): void {
  for (const sentence of sentencesOf(line)) readSentence(reading, sentence)
}

function readItems(reading: Reading, items: readonly [string, string][], after: readonly Decoded[]): void {
  let lastBeats = { from: 1, to: 1 }
  for (const [label, words] of items) {
    const [from, to] = label.split('–').map(Number)
    if (label !== 'or') {
      lastBeats = { from: from!, to: to ?? from! }
      readItem(reading, lastBeats, words, reading.bar.events)
      continue
    }
    const lead = words.match(/^(?:Easier|Another way)(?: for beats? (\d+)(?:–(\d+))?)?[:.] /)!
    const item = lead[1] === undefined ? lastBeats : { from: Number(lead[1]), to: Number(lead[2] ?? lead[1]) }
    const at = beatStart(reading, item.from)
    const before = [...reading.bar.events, ...after].filter((event) => event.at < at)
    const into = [...before]
    const { cuts } = reading
    Object.assign(reading, { cuts: [], aside: true })
    readItem(reading, item, words.slice(lead[0].length), into)
    Object.assign(reading, { cuts, aside: false })
    reading.bar.alternatives.push({ at, events: into.slice(before.length) })
  }
}

function readItem(reading: Reading, item: Reading['item'], words: string, into: Decoded[]): void {
  Object.assign(reading, { item, into, cursor: null, cut: null, justCut: false, itemStarted: false })
  for (const sentence of sentencesOf(words)) readSentence(reading, sentence)
}

/** Sentences without their full stops and without remarks. */
function sentencesOf(words: string): readonly string[] {
  const spoken = words.replace(/“[^”]*”/g, '').trim()
  return spoken
    .split(/(?<=\.) /)
    .map((sentence) => sentence.replace(/\.$/, '').trim())
    .filter((sentence) => sentence !== '')
}
