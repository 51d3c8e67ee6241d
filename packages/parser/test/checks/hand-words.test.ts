import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

test('a finding in a pickup calls it so, not bar 0', () => {
  const text = `---
title: Quay
tempo: 190
---

:::shapes
Em    0 2 2 0 0 0
C     x 3 2 0 1 0
:::

:::part{#quay title="Quay" grid=16}
pickup
  4: Em C Em C
bar 1
  1-4: Em - - - - - - - - - - - - - - -
repeat 1
:::
`
  const source = { path: 'quay.md', text }
  const read = readLesson(source)
  expect(read.findings).toEqual([])
  const messages = checkLesson(read.lesson, [source]).findings.map(({ message }) => message)
  expect(messages.filter((message) => /bar 0/.test(message))).toEqual([])
  expect(messages).toContainEqual(expect.stringMatching(/^the change in the pickup, beat 4/))
  expect(messages).toContainEqual(expect.stringMatching(/^the pickup asks for [\d.]+ swings a second/))
})
