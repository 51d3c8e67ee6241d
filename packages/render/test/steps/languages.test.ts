import { expect, test } from 'vitest'
import { partPlainText, stepsOfPart } from '../../src/steps/index.ts'
import { ENGLISH } from '../../src/steps/speak/english.ts'
import { GERMAN } from '../../src/steps/speak/german.ts'
import { catalogueFor } from '../../src/steps/speak/languages.ts'
import { openMessages } from '../../src/steps/speak/messages.ts'
import { plainText } from '../../src/steps/speak/rich-text.ts'
import { openVoice } from '../../src/steps/speak/voice.ts'
import { ferryQueue } from './ferry-queue.ts'
import { generatePlan } from './generate-plan.ts'
import { buildLesson } from './score-builder.ts'
import { stepsWritten } from './written-steps.ts'

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
  expect(text).toContain('im 8. Bund auf der H-Saite')
  expect(text).toContain('von der A-Saite bis zur hohen E-Saite')
  expect(inGerman('numbers')).toContain('im 8. Bund auf Saite 2')
  expect(text).toContain('Takte 3, 5 und 7 sind wieder Takt 1.')
  expect(text).toContain('Takt 6 ist wieder Takt 2.')
  expect(text).toContain('Acht Takte, vier verschiedene, nach einem Auftakt.')
})

test('German puts strings into the case that their message asks for, by name and by number', () => {
  const say = openMessages('de', {
    ...GERMAN,
    bare: '{s}',
    at: 'auf <dative>{s}</dative>',
    to: 'bis <toward>{s}</toward>',
  })
  const spoken = (
    naming: 'names' | 'numbers',
    kind: 'plain' | 'open',
    strings: readonly number[],
  ): readonly string[] => {
    const s = openVoice(say, lesson.instrument, naming).strings[kind](strings)
    return ['bare', 'at', 'to'].map((key) => plainText(say(key, { s }), 'und'))
  }
  expect(spoken('names', 'plain', [1])).toEqual(['die hohe E-Saite', 'auf der hohen E-Saite', 'bis zur hohen E-Saite'])
  expect(spoken('names', 'plain', [3, 2, 1])).toEqual([
    'die G-, H- und hohe E-Saite',
    'auf der G-, H- und hohen E-Saite',
    'bis zur G-, H- und hohen E-Saite',
  ])
  expect(spoken('names', 'open', [4])).toEqual([
    'die leere D-Saite',
    'auf der leeren D-Saite',
    'bis zur leeren D-Saite',
  ])
  expect(spoken('numbers', 'plain', [5])).toEqual(['Saite 5', 'auf Saite 5', 'bis zu Saite 5'])
  expect(spoken('numbers', 'plain', [3, 2, 1])).toEqual([
    'die Saiten 1–3',
    'auf den Saiten 1–3',
    'bis zu den Saiten 1–3',
  ])
  expect(spoken('numbers', 'open', [6, 4])).toEqual([
    'die leeren Saiten 6 und 4',
    'auf den leeren Saiten 6 und 4',
    'bis zu den leeren Saiten 6 und 4',
  ])
})

test('German counts one and many its own way, and quotes a count with its own marks', () => {
  const say = openMessages('de', GERMAN)
  const spoken = (key: string, values: Readonly<Record<string, string | number>>): string =>
    plainText(say(key, values), 'und', ['‚', '‘'])
  expect(spoken('form.bars', { n: 1, count: 'eins' })).toBe('ein Takt')
  expect(spoken('form.bars', { n: 8, count: 'acht' })).toBe('acht Takte')
  expect(spoken('form.repeat', { n: 1, list: '4', times: 'zweimal' })).toBe('Takt 4 wird zweimal gespielt.')
  expect(spoken('form.repeat', { n: 4, list: '1–4', times: 'dreimal' })).toBe('Die Takte 1–4 werden dreimal gespielt.')
  expect(spoken('form.ending', { k: 2, numbers: '1 und 2', n: 1, list: '7' })).toBe('Klammern 1 und 2: Takt 7.')
  expect(['1', '3', '7'].map((n) => spoken('times', { n, word: '' }))).toEqual(['einmal', 'dreimal', '7-mal'])
  expect(spoken('ordinal', { n: '2' })).toBe('Teil 2')
  expect(spoken('count.of', { count: 'a', beat: '2' })).toBe('a der 2')
  expect(plainText(say('count.and'), 'und', ['‚', '‘'])).toBe('‚und‘')
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

test('German tells exchanged shapes, easing, cuts and what is struck again in its own order', () => {
  const bar = 'bar 1\n  1: Em7 x x Em7\n  2 in 3: Em7 - Em7\n  3: 3@6(3) - 3@6 -\n  4: . . . .\n'
  const steps = partPlainText(stepsWritten(`${bar}bar 2 = bar 1 with A9 for Em7`, { language: 'de' }))
  expect(steps).toContain(
    'Locker lassen heißt: nicht mehr drücken, aber die Finger auf den Saiten lassen. Locker lassen:',
  )
  expect(steps).toContain('Teil die Zählzeit in drei gleiche Teile: 2 ‚und‘ ‚a‘.')
  expect(steps).toContain('Schlag noch einmal Saite 6 auf ‚und‘, abwärts;')
  expect(steps).toContain('Wie Takt 1, mit A9 statt Em7.')
})
