import { expect, test } from 'vitest'
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
