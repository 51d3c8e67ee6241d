import { beatStart, frameAt, ticksOf } from './counts.ts'
import type { Decoded } from './decoded.ts'
import type { Reading } from './reading.ts'

/** Puts a run of events down at a place, a slot each, or at the place that needs no saying; throws where one would have to be said. */
export function put(reading: Reading, place: string | undefined, made: readonly Omit<Decoded, 'at'>[]): void {
  let at = place === undefined ? unsaidPlace(reading) : ticksOf(reading, place)
  const frame = frameAt(reading, at)
  for (const event of made) {
    reading.into.push({ ...event, notes: event.notes.map((note) => ({ ...note })), at })
    at += frame.length / frame.parts
  }
  reading.cursor = at < frame.at + frame.length ? at : null
  reading.itemStarted = true
  reading.justCut = false
  reading.holding = false
}

function unsaidPlace(reading: Reading): number {
  if (reading.justCut) return reading.cut!.at
  if (!reading.itemStarted) return beatStart(reading, reading.item.from)
  if (reading.cursor === null) throw new Error('no place said')
  return reading.cursor
}
