import { expect, test } from 'vitest'
import { cardPlainText, plainText, stepsOfPart } from '../../src/steps/index.ts'
import { ferryQueue } from './ferry-queue.ts'

const { lesson, part } = ferryQueue()
const steps = stepsOfPart(lesson, part)

test('gives a card to each distinct bar and one line to the rest', () => {
  expect(steps.cards.map((card) => card.bar)).toEqual([0, 1, 2, 4, 8])
  expect(steps.lines.map((line) => `${line.lead} ${plainText(line.text, 'and')}`)).toEqual([
    'Bars 3, 5 and 7 are bar 1 again.',
    'Bar 6 is bar 2 again.',
  ])
  expect(plainText(steps.form, 'and')).toBe('Eight bars, four different ones, after a pickup.')
})

test('tells a bar that differs in two beats by the bar it differs from, and shows those beats', () => {
  const card = steps.cards.find((one) => one.bar === 2)
  expect(card?.as).toEqual({ bar: 1, exchanges: [], untilTicks: 6720, fromTicks: 13440 })
  expect([card?.fromTicks, card?.toTicks]).toEqual([6720, 13440])
  expect(card?.asText).toBe('As bar 1 to the end of beat 2, then:')
})

test('says no sentence twice in a card and needs 25 words a sentence at most', () => {
  for (const card of steps.cards) {
    const sentences = card.items.flatMap((item) =>
      item.clauses.flatMap((clause) => plainText(clause.text, 'and').split(/(?<=[.”]) /)),
    )
    expect(new Set(sentences).size, sentences.join('\n')).toBe(sentences.length)
    for (const sentence of sentences) expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(25)
  }
})

test('covers each card in clauses whose ticks lie inside the bar or run over its end', () => {
  for (const card of steps.cards) {
    for (const item of card.items) {
      for (const clause of item.clauses) {
        expect(clause.fromTicks).toBeGreaterThanOrEqual(card.fromTicks)
        expect(clause.toTicks).toBeGreaterThan(clause.fromTicks)
      }
    }
  }
})

test('describes a shape in full once, then by name', () => {
  const text = steps.cards.map((card) => cardPlainText(card, steps)).join('\n')
  expect(text.match(/Em7: finger 1 across fret 7/g)).toHaveLength(1)
  expect(text).toContain('Em7 open implies Em7.')
})

test('names strings when the lesson asks for names', () => {
  const text = cardPlainText(stepsOfPart(lesson, part, { strings: 'names' }).cards[1]!, steps)
  expect(text).toContain('finger 1 across fret 7 from the A string to the high E string')
})
