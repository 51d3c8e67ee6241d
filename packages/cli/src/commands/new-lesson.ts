import { stemOf } from '../files/stem.ts'

/**
 * The text of a first lesson: short, complete, and without findings. The music is made up.
 *
 * @param title printed in the front matter as a YAML string.
 */
export function newLesson(title: string): string {
  return `---
title: ${JSON.stringify(title)}
subtitle: Two chords and a steady hand
tempo: 72
time: 4/4
key: E minor
---

Write to your pupil here. Everything in Markdown works: *italics*, **bold**, lists, tables, links.

:::shapes
Em    0 2 2 0 0 0    fingers 0 2 3 0 0 0
Am    x 0 2 2 1 0    fingers x 0 2 3 1 0
:::

:::part{#verse title="Verse" grid=8}
// Each beat has one sign for each half: a chord, x for a scratch, - to hold, . for silence.
bar 1 chords Em
  1: Em -
  2: Em Em
  3: x Em
  4: Em x
bar 2 chords Am
  1: Am -
  2: Am Am
  3: x Am
  4: Am -
  say 4: let it ring into the next bar
bar 3-4 = bar 1-2
repeat 1-4
:::
`
}

/** A title made from a file name, as in `titleOf('lessons/rainy-day.md')` = `Rainy day`. */
export function titleOf(fileName: string): string {
  const words = stemOf(fileName)
    .replace(/[-_\s]+/g, ' ')
    .trim()
  return words === '' ? 'A new lesson' : words.charAt(0).toUpperCase() + words.slice(1)
}
