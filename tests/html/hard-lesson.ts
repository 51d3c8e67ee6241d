/** A lesson of what is hard to fit: long names and words, a wide table, many grids, long bars, every kind of block. */
export const HARD_LESSON: string = `---
title: Lamplightyardthursdayeveningsbeginnersrhythmguitarworkshop
subtitle: A subtitle that goes on for rather longer than any subtitle has reason to, and then a little more
tempo: 56
time: 12/8
count: 4
key: Db major
level: the very last page of the second book, after everything else
---

A line with \`a_piece_of_code_that_has_no_space_in_it_and_goes_on_and_on_and_on_and_on_and_on\` in it, and :chord[Dbmaj13#11/Ab], and a
[link with an address](https://example.org/a/very/long/address) to follow.

\`\`\`
a line of code that is not broken, however long it is, because its spaces and its columns mean something to whoever reads it
\`\`\`

| Bars | Chord | Where finger 1 sits | What the thumb does | What to listen for | How often |
|------|:-----:|---------------------|---------------------|--------------------|----------:|
| 1–2  | Dbmaj13#11/Ab | fret 4, string 3 | rests on string 6 | the ninth against the eleventh | 12 |
| 3    | Gbm | fret 2, string 1 | nothing | the change | 4 |

> A quotation stands apart
>
> 1. with a list in it
>    - and one inside that

:::shapes
Dbmaj13#11    9 x 8 8 8 8    fingers 3 x 1 1 1 2    chord Dbmaj7
Ebm           x 6 8 8 7 6    fingers x 1 3 4 2 1
Ab7           4 6 4 5 4 4    fingers 1 3 1 2 1 1
Gb            2 4 4 3 2 2    fingers 1 3 4 2 1 1
Gbm           2 4 4 2 2 2    fingers 1 3 4 1 1 1
Bbm           x 1 3 3 2 1    fingers x 1 3 4 2 1
Fm            1 3 3 1 1 1    fingers 1 3 4 1 1 1
:::

:::part{#long title="A part with a name that is much longer than the names of parts" grid=16}
pickup
  4: x x Ebm x x x
section A section whose name is longer than its bar
bar 1 chords Dbmaj13#11/Ab Ab7sus4/Eb Gbm Ab7
  1: Dbmaj13#11 x x Dbmaj13#11 x x
  2: Ab7 x Ab7@1-3 x x Ab7
  3: x x Gbm' x Gbm+6@1 x
  4: Ab7 - - x x x
  say 2: Say it slowly, and say it again, until you could say it asleep and on a boat in a storm
bar 2
  1: Gb - - - - -
  2: - - x Gb x x
  3: Bbm x x Bbm x x
  4: Fm> x x Fm< x x
bar 3 = bar 1
bar 4 = bar 2
  4: Fm - - - - -
repeat 1-4
:::

::strip{part=long bars=1-2}

::form[A part with a name that is much longer than the names of parts x2, A section whose name is longer than its bar x4]

::blank{bars=3}

:::care
Stop when it hurts.
:::

:::answer
It is the *fourth* bar.
:::
`
