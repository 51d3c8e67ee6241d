import { checkLesson, type Finding, type Lesson, readLesson } from '@barwise/parser'

/** Invented, and too much for one hand on purpose: findings in shapes, in whole cards, in cards told by another, in a pickup. */
export const ROPE_LADDER: string = `---
title: Rope Ladder
tempo: 150
goal: 190
key: E minor
---

Everything here is a little too much for one hand.

:::shapes
Em     0 2 2 0 0 0
Gap    1 x 3 4 x 6
Am     x 0 2 2 1 0
:::

:::part{#verse title="Verse" grid=16}
pickup
  4: . . Em x
bar 1 chords Em
  1: Em - x x
  2: Em x Em x
  3: x x Em x
  4: Em x Am x
bar 2 = bar 1
  4: Am Gap Em Am
bar 3 chords G
  1: Gap - Am -
  2: Em> Em> Am Am
  3: Gap x Am x
  4: Em - - -
bar 4 = bar 1
repeat 1-4
:::

:::part{#coda title="Coda" grid=16 show=sheet}
bar 1
  1: 5@1(1) 7@3(4) 3@5(1) .
  2: 12@1 1@6 12@1 1@6
  3: . . . .
  4: . . . .
:::

:::teacher
Let them play bar 2 with one strum a beat first.
:::
`

/** The lesson of a text with what the check found in it. */
export function checked(text: string): { readonly lesson: Lesson; readonly findings: readonly Finding[] } {
  const source = { path: 'rope-ladder.md', text }
  return checkLesson(readLesson(source).lesson, [source])
}
