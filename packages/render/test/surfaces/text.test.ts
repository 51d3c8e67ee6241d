import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { readLesson } from '@barwise/parser'
import { expect, test } from 'vitest'
import { lessonText } from '../../src/surfaces/text.ts'

const path = fileURLToPath(new URL('../../../../examples/ferry-queue.md', import.meta.url))
const text = lessonText(readLesson({ path: 'ferry-queue.md', text: readFileSync(path, 'utf8') }).lesson)

test('opens with the underlined title and says the prose, the grips and the steps in order', () => {
  expect(text.startsWith('Ferry Queue\n===========\n')).toBe(true)
  const places = [
    'The fretting hand decides',
    'Em7: x 7 9 7 8 7',
    'Bar 1, also bars 3, 5 and 7.',
    'Bar 6 is bar 2.',
    'Stop at pain',
  ]
  const found = places.map((words) => text.indexOf(words))
  expect(
    found.every((place) => place >= 0),
    JSON.stringify(found),
  ).toBe(true)
  expect([...found].sort((a, b) => a - b)).toEqual(found)
})

test('says the steps of a part once', () => {
  expect(text.match(/^Bar 2, also bar 6\.$/gm)).toHaveLength(1)
})

test('holds no character that a Braille printer or an e-mail has to guess', () => {
  expect(text).not.toMatch(/[\u00a0\u00ad\ue000-\uf8ff]|undefined|\[object/)
})
