import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { checkLesson, type Event, type Lesson, type Part, readLesson } from '@barwise/parser'
import { itemPlainText, partPlainText, stepsOfPart } from '@barwise/render'
import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { expect, test } from 'vitest'
import { expectReadsBack } from './read-back.ts'
import { faultsOf } from './sentences.ts'

const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url))
const source = (path: string) => ({ path, text: readFileSync(EXAMPLES + path, 'utf8') })
const shapes = source('shapes.md')
const parts = readdirSync(EXAMPLES)
  .filter((path) => path.endsWith('.md') && path !== 'book.md' && path !== 'shapes.md')
  .map(source)
  .map((file) => checkLesson(readLesson(file, { shapes }).lesson, [file, shapes]).lesson)
  .flatMap((lesson) => lesson.parts.map((part) => ({ lesson, part })))
const texts = parts.map(({ lesson, part }) => partPlainText(stepsOfPart(lesson, part, { language: 'en' })))

function words(text: string): number {
  return text.match(/[\p{L}\p{N}][\p{L}\p{N}’/#-]*/gu)?.length ?? 0
}

test('the example book has parts to tell', () => {
  expect(parts.length).toBeGreaterThanOrEqual(8)
})

test('the English steps of every part of the example book read back as its events', () => {
  for (const { lesson, part } of parts) expectReadsBack(lesson, part)
})

test('no sentence stands twice in a card, and none is longer than 25 words', () => {
  for (const { lesson, part } of parts) {
    expect(faultsOf(stepsOfPart(lesson, part, { language: 'en' }), 25), part.id).toEqual([])
  }
})

/** Every event of a bar in full: its count, its stroke, each string with its finger and its fret, how long it lasts. */
function inFull(event: Event): string {
  const place = 'on the place of the beat'
  if (event.kind === 'rest') return `Silence ${place}.`
  const marks = event.marks.join(' ')
  if (event.kind === 'scratch') return `Scratch ${event.stroke} ${place} ${marks}.`
  const notes = event.notes.map(
    (note) => `finger ${note.finger ?? 'x'} at fret ${note.fret ?? 'x'} on string ${note.string}`,
  )
  return `Strike ${event.stroke ?? event.technique} ${place}: ${notes.join(', ')} ${marks}; let it last.`
}

function fullWords(part: Part, distinctOnly: boolean): number {
  const bars = part.bars.filter((bar) => !distinctOnly || bar.sameAs === null)
  return words(bars.flatMap((bar) => bar.events.map(inFull)).join(' '))
}

/** The words that tell the bars: items and lines, without heads, remarks and the rhythm to say. */
function stepWords(lesson: Lesson, part: Part): number {
  const steps = stepsOfPart(lesson, part, { language: 'en' })
  const items = steps.cards.flatMap((card) =>
    card.items.map((item) => itemPlainText(item, steps).replace(/“[^”]*”/g, '')),
  )
  const heads = steps.cards.flatMap((card) => [card.asText, card.countText.map((piece) => piece.text).join('')])
  const lines = steps.lines.map((line) => `${line.lead} ${line.text.map((piece) => piece.text).join('')}`)
  return words([...items, ...heads, ...lines].join(' '))
}

test('the steps use at most 60 % of the words of a version that describes every event in full', () => {
  let told = 0
  let full = 0
  let fullDistinct = 0
  for (const { lesson, part } of parts) {
    told += stepWords(lesson, part)
    full += fullWords(part, false)
    fullDistinct += fullWords(part, true)
  }
  console.log(`steps ${told} words, all events in full ${full}, events of distinct bars in full ${fullDistinct}`)
  expect(told / full).toBeLessThanOrEqual(0.6)
  expect(told / fullDistinct).toBeLessThanOrEqual(0.6)
})

// Common practice: grade 7 is what a twelve-year-old reads with ease.
test('the steps of the example book have a Flesch-Kincaid grade of 7 at most', () => {
  const spoken = texts.map((text) => text.replace(/^Say: .*$/gm, '').replace(/^[\d–or]+: /gm, '')).join('\n')
  const sentences = spoken.match(/[.!?](?=\s|$|”)/g)?.length ?? 1
  const list = spoken.match(/[\p{L}\p{N}][\p{L}\p{N}’#-]*/gu) ?? []
  const syllables = list.reduce((sum, word) => sum + Math.max(1, syllable(word)), 0)
  const grade = fleschKincaid({ sentence: sentences, word: list.length, syllable: syllables })
  console.log(`Flesch-Kincaid grade ${grade.toFixed(2)}`)
  expect(grade).toBeLessThanOrEqual(7)
})
