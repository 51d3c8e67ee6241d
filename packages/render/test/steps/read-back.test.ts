import type { Bar, Event, Part } from '@barwise/parser'
import { expect, test } from 'vitest'
import { partPlainText, stepsOfPart } from '../../src/steps/index.ts'
import { type Decoded, decodePart } from './decoder.ts'
import { ferryQueue } from './ferry-queue.ts'
import { generatePlan } from './generate-plan.ts'
import { buildLesson } from './score-builder.ts'

/** Events of a bar as plain lines; silences next to each other are one. */
function lines(events: readonly { readonly at: number; readonly line: string }[]): string[] {
  return events
    .filter((event, i) => !(event.line === 'rest' && events[i - 1]?.line === 'rest'))
    .map(({ at, line }) => `${at} ${line}`)
}

function sorted(strings: readonly number[] | null): string {
  return strings === null ? 'all' : [...strings].sort((a, b) => a - b).join()
}

function ofScore(events: readonly Event[]): string[] {
  return lines(
    events.map((event) => {
      if (event.kind === 'rest') return { at: event.at, line: 'rest' }
      const marks = `${event.stroke} ${event.marks.join()}${event.palmMuted ? ' palm' : ''}`
      if (event.kind === 'scratch') return { at: event.at, line: `scratch ${sorted(event.strings)} ${marks}` }
      const notes = event.notes.map((note) => `${note.string}:${note.fret}:${note.from}:${note.fromFret}`)
      return { at: event.at, line: `strike ${notes.join(' ')} ${marks}${event.rolled ? ' rolled' : ''}` }
    }),
  )
}

function ofWords(events: readonly Decoded[]): string[] {
  return lines(
    events.map((event) => {
      if (event.kind === 'rest') return { at: event.at, line: 'rest' }
      const marks = `${event.stroke} ${event.marks.join()}${event.palmMuted ? ' palm' : ''}`
      if (event.kind === 'scratch') return { at: event.at, line: `scratch ${sorted(event.strings)} ${marks}` }
      const notes = event.notes.map((note) => `${note.string}:${note.fret}:${note.from}:${note.fromFret}`)
      return { at: event.at, line: `strike ${notes.join(' ')} ${marks}${event.rolled ? ' rolled' : ''}` }
    }),
  )
}

/** Each event's length when it lasts until the next one, across bar lines; a silence ends with its bar. */
function durationsAgree(part: Part): void {
  const flat = part.bars.flatMap((bar: Bar, i) => {
    const before = part.bars.slice(0, i).reduce((sum, one) => sum + one.length, 0)
    return bar.events.map((event) => ({ event, start: before + event.at, barEnd: before + bar.length }))
  })
  const end = part.bars.reduce((sum, one) => sum + one.length, 0)
  flat.forEach(({ event, start, barEnd }, i) => {
    const next = flat[i + 1]?.start ?? end
    expect(event.duration, JSON.stringify(event)).toBe((event.kind === 'rest' ? Math.min(barEnd, next) : next) - start)
  })
}

function readsBack(built: ReturnType<typeof buildLesson>): void {
  const text = partPlainText(stepsOfPart(built.lesson, built.part, { language: 'en', strings: 'numbers' }))
  let decoded: ReturnType<typeof decodePart>
  try {
    decoded = decodePart(text)
  } catch (error) {
    throw new Error(`${error instanceof Error ? error.message : error}\n${text}`)
  }
  expect(
    decoded.map((bar) => bar.number),
    text,
  ).toEqual(built.part.bars.map((bar) => bar.number))
  for (const bar of built.part.bars) {
    const words = decoded.find((one) => one.number === bar.number)!
    expect(words.length).toBe(bar.length)
    expect(ofWords(words.events), `bar ${bar.number}\n${text}`).toEqual(ofScore(bar.events))
    if (bar.sameAs !== null) continue
    expect(
      words.alternatives.map((one) => ofWords(one.events)),
      text,
    ).toEqual(bar.alternatives.map((one) => ofScore(one.events)))
  }
  durationsAgree(built.part)
}

test('the English steps of a part read back as its events', () => {
  readsBack(ferryQueue())
})

test('the English steps of a thousand generated parts read back as their events', () => {
  for (let seed = 1; seed <= 1000; seed++) {
    try {
      readsBack(buildLesson(generatePlan(seed)))
    } catch (error) {
      throw new Error(`seed ${seed}: ${error instanceof Error ? error.message : error}`)
    }
  }
}, 120_000)
