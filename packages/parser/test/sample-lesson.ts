/** The lesson that the language is shown by: a pickup, copies, another way to play a beat, a remark, words with references. */
export const SAMPLE_LESSON: string = `---
title: Ferry Queue
subtitle: A two-chord chop that never stops moving
tempo: 92
time: 4/4
key: E minor
touch: light
---

Keep the strumming hand moving like a pendulum, even when it strikes nothing.

:::shapes
Em7      x 7 9 7 8 7        fingers x 1 3 1 2 1
A9       x 12 11 12 12 12   fingers x 2 1 3 3 3
Em7.open x 7 7 7 7 x        implies Em7
:::

:::part{#groove title="Groove" grid=16}
pickup
  4: . . x x
bar 1 chords Em7 - - A9 - - - -
  1: Em7 x x Em7
  2: x x A9 -
  3: - x A9' x
  4: x A9@1-3 x x
  say 3: let the ninth chord go as soon as it has spoken
bar 2 = bar 1
  4: x 10@2 h:12@2 -
  or 4: x 12@2 - -
bar 3-4 = bar 1-2
repeat 1-4
:::

::plan{part=groove}

The move in :bar[2] is the only one that needs :shape[A9] to let go early.
`
