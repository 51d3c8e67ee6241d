import { readCard } from './card.ts'
import { readCount, readStyle } from './counts.ts'
import type { DecodedBar } from './decoded.ts'
import { openReading, type Reading } from './reading.ts'
import { LIST, toList } from './spoken-numbers.ts'

/**
 * Reads the English steps of a part, as plain text, back into events. Uses nothing of the renderer: only the words, and the rules
 * that the words themselves state. Throws at the first sentence that it does not understand.
 */
export function decodePart(text: string): DecodedBar[] {
  const reading = openReading(text)
  const blocks = text.trim().split('\n\n')
  for (const line of blocks.flatMap((block) => block.split('\n'))) readSame(reading, line)
  const head = blocks[0] ?? ''
  reading.head = { ...reading.head, ...readCount(head), style: readStyle(head) ?? reading.head.style }
  for (const block of blocks.slice(1)) {
    if (/^(Bar \d+|Pickup)(, also .*)?\.\n/.test(block)) readCard(reading, block.split('\n'))
  }
  for (const [bar, as] of reading.same) {
    const source = reading.bars.get(as)
    if (source === undefined) throw new Error(`bar ${bar} is told as bar ${as}, which is not told`)
    reading.bars.set(bar, { ...source, number: bar, alternatives: [] })
  }
  return [...reading.bars.values()].sort((a, b) => a.number - b.number)
}

/** Reads a line of bars that are others again. */
function readSame({ same }: Reading, line: string): void {
  const bars = line.match(new RegExp(`^Bars? (${LIST}) (?:is|are) bar (\\d+) again\\.`))
  if (bars !== null) for (const bar of toList(bars[1]!)) same.set(bar, Number(bars[2]))
  const run = line.match(/^Bars (\d+)–(\d+) repeat bars? (\d+)(?:–(\d+))?\.$/)
  if (run === null) return
  const [from, to, start] = [Number(run[1]), Number(run[2]), Number(run[3])]
  const period = Number(run[4] ?? run[3]) - start + 1
  for (let bar = from; bar <= to; bar++) {
    const source = start + ((bar - from) % period)
    same.set(bar, same.get(source) ?? source)
  }
}
