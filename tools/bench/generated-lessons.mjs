// Lessons for measuring: real in kind, made up by number, the same on every run.

const SHAPES = `:::shapes
Em7  x 7 9 7 8 7        fingers x 1 3 1 2 1
A9   x 12 11 12 12 12   fingers x 2 1 3 3 3
G    3 2 0 0 0 3        fingers 2 1 0 0 0 3
:::
`

const BEATS = [
  'Em7 x x Em7',
  'x x A9 -',
  "- x A9' x",
  'x A9@1-3 x x',
  'Em7> - x Em7<',
  'x Em7 - Em7+10@2',
  'G - x G',
  'G@1-3 x G -',
]

/** A bar of sixteenths, told apart from its neighbours by its number. */
function bar(number) {
  const beat = (index) => {
    const signs = BEATS[(number * 7 + index * 3 + Math.floor(number / 8)) % BEATS.length]
    // A hold needs something before it; the first beat of a bar starts afresh.
    return index === 1 && signs.startsWith('-') ? BEATS[0] : signs
  }
  return [`bar ${number}`, ...[1, 2, 3, 4].map((index) => `  ${index}: ${beat(index).replace(/^- /, 'x ')}`)].join('\n')
}

/** One part of so many bars. */
export function longLesson(bars) {
  const lines = Array.from({ length: bars }, (_, index) => bar(index + 1)).join('\n')
  return `---\ntitle: Long ${bars}\ntempo: 72\nkey: E minor\n---\n\n${SHAPES}\n:::part{#long title="Long" grid=16 show="sheet"}\n${lines}\n:::\n`
}

/** A lesson as teachers write them: prose, shapes, sixteen bars of which half repeat, cards and a plan. */
export function teachingLesson(number) {
  const first = Array.from({ length: 8 }, (_, index) => bar(index + 1 + number)).join('\n')
  const renumbered = first.replace(/^bar (\d+)/gm, (_, n) => `bar ${Number(n) - number}`)
  return `---
title: Study ${number}
subtitle: Sixteen bars, half of them again
tempo: ${64 + (number % 5) * 2}
time: 4/4
key: E minor
---

Keep the strumming hand moving like a pendulum, even when it strikes *nothing*. It swings sixteen times a bar.

${SHAPES}
The fretting hand decides what is **heard**. See :bar[3].

:::part{#study title="Study" grid=16}
${renumbered}
bar 9-16 = bar 1-8
repeat 1-16
:::
`
}
