import { expect, test } from 'vitest'
import { PUPIL } from '../../../src/page/edition.ts'
import { pageOf, wordsIn } from './booklet-of.ts'

const lesson = (pickup: string): string => `---
title: Gangway
tempo: 72
key: E minor
---

:::shapes
Em7    x 7 9 7 8 7    fingers x 1 3 1 2 1
:::

:::part{#walk title="Walk" grid=16}
pickup
  4: ${pickup}
bar 1
  1: Em7 x x Em7
  2: x x Em7 x
  3: Em7 x x x
  4: x x Em7 x
bar 2 = bar 1
:::
`

test('tells a pickup of scratches alone in a line, which its anchor leads to', () => {
  const page = pageOf(lesson('x x x x'))
  const names = [...page.querySelectorAll('.card h3')].map((name) => wordsIn(name))
  expect(names).toEqual(['Bar 1'])
  const [pickup, again] = [...page.querySelectorAll('.same li')]
  expect(wordsIn(pickup ?? null)).toMatch(/^Pickup Scratch .*\.$/)
  expect(pickup?.id).toBe('lesson.walk.bar-0')
  expect(wordsIn(again ?? null)).toMatch(/^Bar 2/)
})

test('gives a pickup that strikes something a card', () => {
  const names = [...pageOf(lesson('x x Em7 x')).querySelectorAll('.card h3')].map((name) => wordsIn(name))
  expect(names).toEqual(['Pickup', 'Bar 1'])
})

const rhythmic = lesson('x x x x').replace('bar 2 = bar 1', 'bar 2 = bar 1\n  4: Em7 - - -')

test('sets the words of a short figure beside it, and those of a long one under it', () => {
  const [whole, difference] = [...pageOf(rhythmic).querySelectorAll('.card')]
  expect(whole?.className).toBe('card')
  const share = /^card beside b(\d+)$/.exec(difference?.className ?? '')?.[1]
  expect(Number(share)).toBeGreaterThan(15)
  expect(Number(share)).toBeLessThanOrEqual(60)
})

test('sets all words under the figures in large print', () => {
  const page = pageOf(rhythmic, { edition: { ...PUPIL, large: true } })
  expect(page.querySelectorAll('.card')).toHaveLength(2)
  expect(page.querySelectorAll('.beside')).toHaveLength(0)
})

test('holds the beats of the rhythm to say together, and says it to a screen reader with commas', () => {
  const line = pageOf(rhythmic).querySelector('.rhythm')
  const beats = [...(line?.querySelectorAll('[aria-hidden="true"] .beat') ?? [])].map((beat) => wordsIn(beat))
  expect(beats).toEqual([
    'Say: DOWN chick chick UP',
    'chick chick DOWN chick',
    'DOWN chick chick chick',
    'chick chick DOWN chick',
  ])
  expect(wordsIn(line?.querySelector('.spoken') ?? null)).toBe(
    'Say: DOWN chick chick UP, chick chick DOWN chick, DOWN chick chick chick, chick chick DOWN chick',
  )
})

test('cuts the figures of a phone at beats, and names what goes on', () => {
  const narrow = pageOf(rhythmic).querySelectorAll('.card .narrow')
  expect(narrow[0]?.querySelectorAll('svg')).toHaveLength(2)
  expect(narrow[1]?.querySelectorAll('svg')).toHaveLength(1)
  const [first, second] = [...(narrow[0]?.querySelectorAll('svg') ?? [])].map((svg) => svg.getAttribute('aria-label'))
  expect(second).toBe(`${first}, continued`)
})

test('shows a bar with its shapes exchanged whole, tells only the new grip, and says the chords that the figure shows', () => {
  const text = lesson('x x x x')
    .replace('fingers x 1 3 1 2 1', 'fingers x 1 3 1 2 1\nA9 x 12 11 12 12 12 fingers x 2 1 3 3 3')
    .replace('bar 2 = bar 1', 'bar 2 = bar 1 with A9 for Em7 chords D')
  const [, exchanged] = [...pageOf(text).querySelectorAll('.card')]
  expect(wordsIn(exchanged?.querySelector('.as') ?? null)).toBe('As bar 1, with A9 for Em7.')
  expect(wordsIn(exchanged?.querySelector('.card > .spoken') ?? null)).toBe('Chord: D.')
  const items = [...(exchanged?.querySelectorAll('.steps > li') ?? [])].map((item) => wordsIn(item))
  expect(items).toHaveLength(1)
  expect(items[0]).toMatch(/^A9: finger 3 across fret 12/)
})
