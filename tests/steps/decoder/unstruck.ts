import type { Decoded, DecodedNote, Frets } from './decoded.ts'
import { PLACE, readManner } from './manner.ts'
import { readPresses } from './presses.ts'
import { put } from './put.ts'
import { barsBefore, eventsOf, type Reading } from './reading.ts'
import { toNumber } from './spoken-numbers.ts'

/** Reads a sentence in which the fretting hand sounds alone; false when it is none. */
export function readUnstruck(reading: Reading, sentence: string): boolean {
  const match = sentence.match(new RegExp(`^(${PLACE}), (hammer|pull off to|slide|let it sound) ?(.*)$`, 'i'))
  if (match === null) return false
  const [place, verb, words] = [match[1]!, match[2]!, match[3]!]
  const index = words.search(/(, (?:with|softly|short|palm|then|rolled)|; )/)
  const what = index < 0 ? words : words.slice(0, index)
  const { marks, palmMuted, rolled } = readManner(index < 0 ? '' : words.slice(index), 'strike', reading.count.style)
  const previous = previousEvent(reading)
  const before = previous?.kind === 'strike' ? previous.notes.filter((note) => note.fret !== null) : []
  const target = targetOf(reading, verb === 'let it sound' ? 'nothing' : what, before)
  const from = verb === 'hammer' ? 'hammered' : verb === 'slide' ? 'slid' : 'pulled'
  const notes: DecodedNote[] = before
    .filter((note) => !target.has(note.string))
    .map((note) => ({ ...note, from: 'held', fromFret: null }))
  for (const [string, fret] of target) notes.push({ string, fret, from, fromFret: soundingFret(reading, string) })
  notes.sort((a, b) => b.string - a.string)
  const made = { kind: 'strike', stroke: null, grip: null, strings: null, notes, marks, palmMuted, rolled } as const
  put(reading, place.toLowerCase(), [made])
  return true
}

function targetOf(reading: Reading, what: string, before: readonly DecodedNote[]): Frets {
  if (what === 'nothing') return new Map()
  if (/^(?:onto |to )?(?:it|both|them all)$/.test(what)) return reading.pending.frets
  const moved = what.match(/^(?:it|both|the whole shape) (up|down) (\w+) frets?$/)
  if (moved === null) return readPresses(what, new Map())
  const by = toNumber(moved[2]!) * (moved[1] === 'up' ? 1 : -1)
  return new Map(before.map((note) => [note.string, note.fret! + by]))
}

function previousEvent(reading: Reading): Decoded | undefined {
  const last = reading.into.at(-1)
  if (last !== undefined) return last
  for (const number of barsBefore(reading)) {
    const events = eventsOf(reading, number)
    if (events.length > 0) return events.at(-1)
  }
  return undefined
}

/** The fret at which a string was last heard: in the stroke before, or ringing from an earlier one. */
function soundingFret(reading: Reading, string: number): number | null {
  const earlier = barsBefore(reading)
    .reverse()
    .flatMap((number) => eventsOf(reading, number))
  const last = [...earlier, ...reading.into].findLast((event) => event.notes.some((note) => note.string === string))
  return last?.notes.find((note) => note.string === string)?.fret ?? null
}
