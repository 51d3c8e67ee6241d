import { readPresses } from './presses.ts'
import type { Reading } from './reading.ts'
import { LIST, toList, toNumber } from './spoken-numbers.ts'

/** Reads a sentence that describes a shape; false when it does not. */
export function readDescription(reading: Reading, sentence: string): boolean {
  if (/: (strike|pluck|brush)/.test(sentence)) return false
  return readFirst(reading, sentence) || readLike(reading, sentence) || readMore(reading, sentence)
}

function open(reading: Reading, name: string, frets: Map<number, number | null>): true {
  reading.describing = name
  reading.lastShape = name
  reading.shift = 0
  reading.shapes.set(name, frets)
  return true
}

function readFirst(reading: Reading, sentence: string): boolean {
  const first = sentence.match(/^(.+?): ((?:finger \d|the thumb|fret \d+|open string|no finger|all \w+ strings).*)$/)
  if (first === null || /^(Only|Back|Press|Lift|The whole|Straight)/.test(first[1]!)) return false
  const all = first[2]!.match(/^all (\w+) strings ring open$/)
  if (all !== null) {
    const strings = Array.from({ length: toNumber(all[1]!) }, (_, i) => [i + 1, 0] as const)
    return open(reading, first[1]!, new Map(strings))
  }
  return open(reading, first[1]!, first[2]!.startsWith('no finger') ? new Map() : readPresses(first[2]!, new Map()))
}

function readLike(reading: Reading, sentence: string): boolean {
  const like = sentence.match(/^(.+?) is (.+?) with (.*)$/)
  const known = like === null ? undefined : reading.shapes.get(like[2]!)
  return known !== undefined && open(reading, like![1]!, readPresses(like![3]!, known))
}

function readMore(reading: Reading, sentence: string): boolean {
  if (reading.describing === null) return false
  const shape = new Map(reading.shapes.get(reading.describing))
  const more = sentence.match(/^(?:For .+, a|A)dd (.*)$/)
  if (more !== null) return open(reading, reading.describing, readPresses(more[1]!, shape))
  const ringing = sentence.match(new RegExp(`^(?:.+ leaves s|S)trings? (${LIST}) (?:rings? )?open$`))
  const silent = sentence.match(new RegExp(`^(?:.+ keeps s|S)trings? (${LIST}) (?:stays? )?silent$`))
  if (ringing === null && silent === null) return false
  for (const string of toList((ringing ?? silent)![1]!)) {
    if (ringing === null) shape.delete(string)
    else shape.set(string, 0)
  }
  return open(reading, reading.describing, shape)
}
