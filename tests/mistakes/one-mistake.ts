/** One mistake that writers make in the lesson below. */
export interface Mistake {
  readonly mistake: string
  /** What is written where there is no mistake; the first place in the lesson that reads so. */
  readonly right: string
  /** What is written instead, `⟦code:characters⟧` around what the one finding covers. */
  readonly wrong: string
  /** The help, whole. */
  readonly help: string
  /** What it becomes when the help is followed, where that is not `right`. */
  readonly mended?: string
  /** Bars that cannot be known before the mistake is mended; none without it. */
  readonly lost?: number
}

/** Mistakes in one kind of thing. */
export interface MistakeGroup {
  readonly where: string
  readonly mistakes: readonly Mistake[]
}

/** A sound lesson with one of everything that is easily written wrong. */
export const SOUND_LESSON = `---
title: Boiler Room
tempo: 84
goal: 90
time: 4/4
key: A minor
---

Keep the hand moving.

:::shapes
Am7   5 x 5 5 5 x     fingers 2 x 3 3 3 x
D9    x 5 4 5 5 5     fingers x 2 1 3 3 3
G     3 2 0 0 0 3     fingers 2 1 0 0 0 3
:::

:::part{#riff title="Riff" grid=16}
bar 1 chords Am7 - D9 -
  1: Am7 x x Am7
  2: x x Am7^+1 -
  3: D9 x D9 x
  4: x D9@1-3 x x
bar 2 = bar 1
  4: x 5@2 h:7@2 -
  or 4: x 5@2 - -
  say 4: lightly
bar 3-4 = bar 1-2
section Bridge
bar 5
  1: G - - -
  2: G x x x
  3-4: G - - - | x x x x
repeat 1-4
:::

More words about :bar[2]{part=riff} and :shape[Am7].

::form[Riff x2, Bridge 5]
::plan{part=riff}
`
