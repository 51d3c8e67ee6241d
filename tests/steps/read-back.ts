import type { Event, Lesson, Part } from '@barwise/parser'
import { partPlainText, stepsOfPart } from '@barwise/render'
import { expect } from 'vitest'
import { decodePart } from './decoder/decode-part.ts'
import type { Decoded } from './decoder/decoded.ts'

/** Events of a bar as plain lines; silences next to each other are one. */
function lines(events: readonly { readonly at: number; readonly line: string }[]): string[] {
  return events
    .filter((event, i) => !(event.line === 'rest' && events[i - 1]?.line === 'rest'))
    .map(({ at, line }) => `${at} ${line}`)
}

/** Where a note comes from that nothing strikes is left out of a bar told as another: it hangs on what was played before. */
function lineOf(event: Event | Decoded, told: boolean): { readonly at: number; readonly line: string } {
  const { at } = event
  if (event.kind === 'rest') return { at, line: 'rest' }
  const marks = `${event.stroke} ${event.marks.join()}${event.palmMuted ? ' palm' : ''}`
  if (event.kind === 'scratch') {
    const strings = event.strings === null ? 'all' : [...event.strings].sort((a, b) => a - b).join()
    return { at, line: `scratch ${strings} ${marks}` }
  }
  const notes = event.notes.map(
    (note) => `${note.string}:${note.fret}:${note.from}:${told || event.stroke !== null ? note.fromFret : ''}`,
  )
  return { at, line: `strike ${notes.join(' ')} ${marks}${event.rolled ? ' rolled' : ''}` }
}

/** Holds that a sound of the score lasts until the next event, over bar lines too, and a silence as far as its bar at most. */
function expectTiled(part: Part): void {
  // Where there are endings a sound may go on into either, so that only its length inside its bar is certain.
  const endings = part.repeats.some((repeat) => repeat.endings.length > 0)
  let start = 0
  const flat = part.bars.flatMap((bar) => {
    const at = start
    start += bar.length
    return bar.events.map((event) => ({ event, from: at + event.at, barEnd: at + bar.length }))
  })
  flat.forEach(({ event, from, barEnd }, i) => {
    const next = flat[i + 1]?.from ?? start
    const until = event.kind === 'rest' || endings ? Math.min(barEnd, next) : next
    expect(endings ? Math.min(event.duration, barEnd - from) : event.duration).toBe(until - from)
  })
}

/** Holds that the English steps of a part, read word by word, give its events again: when, strings, frets, strokes, marks; and its remarks. */
export function expectReadsBack(lesson: Lesson, part: Part): void {
  const text = partPlainText(stepsOfPart(lesson, part, { language: 'en', strings: 'numbers' }))
  let bars: ReturnType<typeof decodePart>
  try {
    bars = decodePart(text)
  } catch (error) {
    throw new Error(`${error instanceof Error ? error.message : String(error)}\n${text}`)
  }
  expect(
    bars.map((bar) => bar.number),
    text,
  ).toEqual(part.bars.map((bar) => bar.number))
  for (const { text: remark } of part.bars.flatMap((bar) => bar.remarks)) {
    expect(text.toLowerCase()).toContain(remark.replaceAll('“', '‘').replaceAll('”', '’').toLowerCase())
  }
  for (const bar of part.bars) {
    const words = bars.find((one) => one.number === bar.number)!
    expect(words.length, text).toBe(bar.length)
    expect(
      lines(words.events.map((event) => lineOf(event, bar.sameAs === null))),
      `bar ${bar.number}\n${text}`,
    ).toEqual(lines(bar.events.map((event) => lineOf(event, bar.sameAs === null))))
    if (bar.sameAs !== null) continue
    const told = words.alternatives.map(({ at, events }) => [
      at,
      lines(events.map((event) => lineOf(event, bar.sameAs === null))),
    ])
    expect(told, `bar ${bar.number}\n${text}`).toEqual(
      bar.alternatives.map(({ at, events }) => [at, lines(events.map((event) => lineOf(event, bar.sameAs === null)))]),
    )
  }
  expectTiled(part)
}
