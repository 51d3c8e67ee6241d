import { expect, test } from 'vitest'
import { partPlainText, stepsOfPart } from '../../src/steps/index.ts'
import { ENGLISH } from '../../src/steps/speak/english.ts'
import { GERMAN } from '../../src/steps/speak/german.ts'
import { catalogueFor } from '../../src/steps/speak/languages.ts'
import { openMessages } from '../../src/steps/speak/messages.ts'
import { ferryQueue } from './ferry-queue.ts'
import { generatePlan } from './generate-plan.ts'
import { buildLesson } from './score-builder.ts'

const { lesson, part } = ferryQueue('names')

function inGerman(strings: 'names' | 'numbers'): string {
  return partPlainText(stepsOfPart(lesson, part, { language: 'de-CH', strings }))
}

test('each language says every message the other says', () => {
  expect(Object.keys(GERMAN).sort()).toEqual(Object.keys(ENGLISH).sort())
})

test('a language without a catalogue is spoken in English', () => {
  expect(catalogueFor('pt-BR').language).toBe('en')
  expect(catalogueFor('de-AT').language).toBe('de')
})

test('German calls the second string H, puts frets in order numbers and counts plurals its own way', () => {
  const text = inGerman('names')
  expect(text).toContain('im 8. Bund auf Saite H')
  expect(text).toContain('von Saite A bis Saite E hoch')
  expect(inGerman('numbers')).toContain('im 8. Bund auf Saite 2')
  expect(text).toContain('Takte 3, 5 und 7 sind wieder Takt 1.')
  expect(text).toContain('Takt 6 ist wieder Takt 2.')
  expect(text).toContain('Acht Takte, vier verschiedene, nach einem Auftakt.')
})

test('no language speaks of left or right hands', () => {
  const words = [...Object.values(ENGLISH), ...Object.values(GERMAN)].join(' ')
  expect(words).not.toMatch(/\b(left|right|links?|rechts?|linke|rechte)\b/i)
})

test('two hundred generated parts are spoken in German without a missing message', () => {
  for (let seed = 1; seed <= 200; seed++) {
    const built = buildLesson(generatePlan(seed))
    const text = partPlainText(stepsOfPart(built.lesson, built.part, { language: 'de' }))
    expect(text).not.toMatch(/\{|\}|undefined|\[object/)
  }
})

// The quirks named at the door of the message library.
test('the message library gives tags and spoken words back as objects, and groups plain numbers', () => {
  const say = openMessages('en', { rich: '<c>{name}</c> x {n}', plain: '{n, number}' })
  expect(say('rich', { name: [{ text: '&', style: 'plain' }], n: '1000' })).toEqual([
    { text: '&', style: 'count' },
    { text: ' x 1000', style: 'plain' },
  ])
  expect(say('plain', { n: 1000 })).toEqual([{ text: '1,000', style: 'plain' }])
})
