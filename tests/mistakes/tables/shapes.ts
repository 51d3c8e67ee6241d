import type { MistakeGroup } from '../one-mistake.ts'

const G = 'G     3 2 0 0 0 3     fingers 2 1 0 0 0 3'

export const SHAPES: readonly MistakeGroup[] = [
  {
    where: 'a shape',
    mistakes: [
      {
        mistake: 'has its frets in one word',
        right: 'G     3 2 0 0 0 3',
        wrong: 'G     ⟦wrong-string-count:320003⟧',
        help: 'write `3 2 0 0 0 3`',
      },
      {
        mistake: 'has dashes between its frets',
        right: 'G     3 2 0 0 0 3',
        wrong: 'G     ⟦wrong-string-count:3-2-0-0-0-3⟧',
        help: 'write `3 2 0 0 0 3`',
      },
      {
        mistake: 'has commas between its frets',
        right: 'G     3 2 0 0 0 3',
        wrong: 'G     3⟦fret-out-of-range:,⟧ 2, 0, 0, 0, 3',
        help: 'write `3 2 0 0 0 3`',
      },
      {
        mistake: 'has a fret too few, and is played with its strings and moved',
        right: 'Am7   5 x 5 5 5 x ',
        wrong: 'Am7   ⟦wrong-string-count:5 x 5 5 5⟧ ',
        help: 'write 6 frets with spaces between, `0` for an open and `x` for a silent string',
      },
      {
        mistake: 'has the letter o for its open strings',
        right: 'G     3 2 0 0 0 3',
        wrong: 'G     3 2 ⟦fret-out-of-range:o⟧ o o 3',
        help: 'write `0`',
      },
      {
        mistake: 'has capital letters for its silent strings',
        right: 'Am7   5 x 5 5 5 x',
        wrong: 'Am7   5 ⟦capital-x:X⟧ 5 5 5 X',
        help: 'write `x`',
      },
      {
        mistake: 'has a colon behind its name',
        right: 'G     3 2',
        wrong: '⟦bad-shape-name:G:⟧    3 2',
        help: 'write `G`',
      },
      {
        mistake: 'has an equals sign behind its name',
        right: 'G     3 2',
        wrong: 'G ⟦bad-shape-name:=⟧ 3 2',
        help: 'write `G`, a space and the frets',
      },
      {
        mistake: 'stands in a list',
        right: 'G     3 2',
        wrong: '⟦bad-shape-name:-⟧ G   3 2',
        help: 'delete it',
      },
      {
        mistake: 'has dashes for the fingers that do not press',
        right: G,
        wrong: 'G     3 2 0 0 0 3     fingers 2 1 ⟦bad-finger:-⟧ - - 3',
        help: 'write `1` to `4`, `T` for the thumb, or `x` where no finger presses',
      },
      {
        mistake: 'has a finger on an open string',
        right: G,
        wrong: 'G     3 2 0 0 0 3     fingers 2 1 ⟦finger-on-unfretted-string:4⟧ 0 0 3',
        help: 'write `x` there, or a fret',
      },
      {
        mistake: 'says "finger"',
        right: G,
        wrong: 'G     3 2 0 0 0 3     ⟦unreadable-shape:finger⟧ 2 1 0 0 0 3',
        help: 'write `fingers`',
      },
      {
        mistake: 'says "fingers:"',
        right: G,
        wrong: 'G     3 2 0 0 0 3     ⟦unreadable-shape:fingers:⟧ 2 1 0 0 0 3',
        help: 'write `fingers`',
      },
      {
        mistake: 'has a Cyrillic letter in its name and is played by the plain one',
        right: 'Am7   5 x 5 5 5 x',
        wrong: '⟦strange-character:А⟧m7   5 x 5 5 5 x',
        help: 'type `A` in its place',
      },
      {
        mistake: 'stands twice',
        right: G,
        wrong: `${G}\n⟦duplicate-shape:G⟧     3 2 0 0 0 3     fingers 2 1 0 0 0 3`,
        help: 'delete one of the two lines',
      },
      {
        mistake: 'has the name of another, with other frets',
        right: G,
        wrong: `${G}\n⟦duplicate-shape:G⟧     3 2 0 0 3 3     fingers 2 1 0 0 3 4`,
        help: 'give it another name, such as `G.high`',
        mended: `${G}\nG.high     3 2 0 0 3 3     fingers 2 1 0 0 3 4`,
      },
      {
        mistake: 'has the name of another in place of its own, which is then missing',
        right: G,
        wrong: '⟦duplicate-shape:Am7⟧   3 2 0 0 0 3     fingers 2 1 0 0 0 3',
        help: 'name it `G`, which is played and has no shape, or give it another name',
      },
    ],
  },
]
