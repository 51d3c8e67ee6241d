import type { MistakeGroup } from '../one-mistake.ts'

const TWO = '2: G x x x'
const BAR_5 = '  1: G - - -\n  2: G x x x\n  3-4: G - - - | x x x x'

export const OTHER_WAYS: readonly MistakeGroup[] = [
  {
    where: 'beats in other words',
    mistakes: [
      {
        mistake: 'none at all, line by line',
        right: BAR_5,
        wrong: '  ⟦unreadable-line:G - - -⟧\n  G x x x\n  G - - -\n  x x x x',
        help: 'write `1:` before them',
        mended: '  1: G - - -\n  2: G x x x\n  3: G - - -\n  4: x x x x',
      },
      {
        mistake: 'none at all, a bar in one line',
        right: BAR_5,
        wrong: '  ⟦unreadable-line:G - - - G x x x G - - - x x x x⟧',
        help: 'write `1-4:` before them',
        mended: '  1-4: G - - - G x x x G - - - x x x x',
      },
      {
        mistake: 'counted aloud',
        right: BAR_5,
        wrong: '  ⟦unreadable-line:1 e & a⟧: G - - -\n  2 e & a: G x x x\n  3-4: G - - - | x x x x',
        help: 'write `1:`',
      },
      {
        mistake: 'a range with a comma',
        right: '3-4: G - - - | x x x x',
        wrong: '⟦unreadable-line:3,4⟧: G - - - | x x x x',
        help: 'write `3-4:`',
      },
      {
        mistake: 'a range with "to"',
        right: '3-4: G - - - | x x x x',
        wrong: '⟦unreadable-line:3 to 4⟧: G - - - | x x x x',
        help: 'write `3-4:`',
      },
      {
        mistake: 'a triplet by its name',
        right: TWO,
        wrong: '⟦unreadable-line:2 triplet: G x G⟧',
        help: 'write the beat, a colon, then its signs, as in `2: x x x x`, or `2 in 3: x x x` for a triplet',
        mended: '2 in 3: G x G',
      },
      {
        mistake: 'in a list of stars',
        right: BAR_5,
        wrong: '⟦unreadable-line:*⟧ 1: G - - -\n* 2: G x x x\n* 3-4: G - - - | x x x x',
        help: 'delete it',
      },
    ],
  },
  {
    where: 'signs in other ways',
    mistakes: [
      {
        mistake: 'an action with a space behind its colon',
        right: TWO,
        wrong: '2: ⟦unreadable-stroke:d:⟧ G x x x',
        help: 'put it right before its sign, without a space: `d:Em7`',
      },
      {
        mistake: 'a mark with a space before it',
        right: TWO,
        wrong: '2: G ⟦unreadable-stroke:~⟧ x x',
        help: 'put it right behind its sign, without a space: `Em7~`',
        mended: '2: G~ - x x',
      },
      {
        mistake: 'a low line for a hold',
        right: '1: G - - -',
        wrong: '1: G ⟦unreadable-stroke:_⟧ - -',
        help: 'put it right behind its sign, without a space: `Em7_`; to hold, write `-`',
      },
      {
        mistake: 'several with dashes between',
        right: TWO,
        wrong: '2: ⟦unreadable-stroke:G-x-x-x⟧',
        help: 'put spaces between them: `G x x x`, or `G - x - x - x` with a hold',
      },
      {
        mistake: 'slashes for strokes, four of them',
        right: TWO,
        wrong: '2: ⟦unreadable-stroke:/⟧ / / /',
        help: 'write the shape that is struck, or `x` for a scratch',
      },
      {
        mistake: 'the way of the hand in words',
        right: TWO,
        wrong: '2: G ⟦unreadable-stroke:up⟧ x x',
        help: 'write what is struck; the hand goes down and up by itself, and `d:` or `u:` before a sign turns it',
      },
      {
        mistake: 'square brackets around signs that share a slot',
        right: TWO,
        wrong: '2: ⟦unreadable-stroke:[⟧G x] x x x',
        help: 'write `(` here and `)` at the end',
        mended: '2: (G x) x x x',
      },
      {
        mistake: 'a stroke backwards behind a scratch',
        right: TWO,
        wrong: '2: G x x x⟦unreadable-stroke:\\⟧',
        help: 'write `x` alone',
      },
    ],
  },
  {
    where: 'copies in other words',
    mistakes: [
      {
        mistake: 'with an exception on its line',
        right: 'bar 2 = bar 1\n  4: x',
        wrong: 'bar 2 = bar 1 ⟦bad-copy:except⟧ beat 4\n  4: x',
        help: 'end the line here, and write the beats that differ below it, as in `4: x x x x`',
        lost: 3,
      },
      {
        mistake: 'with a colon at its end',
        right: 'bar 2 = bar 1',
        wrong: 'bar 2 = ⟦bad-copy:bar 1:⟧',
        help: 'write `= bar 1`',
        lost: 3,
      },
      {
        mistake: 'with two equals signs',
        right: 'bar 2 = bar 1',
        wrong: 'bar 2 ⟦bad-copy:==⟧ bar 1',
        help: 'write `= bar 1`',
        lost: 3,
      },
      {
        mistake: 'with "instead of"',
        right: 'bar 3-4 = bar 1-2',
        wrong: 'bar 3-4 = bar 1-2 ⟦bad-copy:with G instead of D9⟧',
        help: 'write `with G for D9`',
        mended: 'bar 3-4 = bar 1-2 with G for D9',
        lost: 2,
      },
      {
        mistake: 'with an arrow',
        right: 'bar 3-4 = bar 1-2',
        wrong: 'bar 3-4 = bar 1-2 ⟦bad-copy:with D9 -> G⟧',
        help: 'write `with G for D9`',
        mended: 'bar 3-4 = bar 1-2 with G for D9',
        lost: 2,
      },
    ],
  },
  {
    where: 'other lines',
    mistakes: [
      {
        mistake: 'chord symbols on a line of their own',
        right: 'bar 5\n',
        wrong: 'bar 5\n⟦unreadable-line:chords G D9⟧\n',
        help: 'write `bar 5 chords G D9`',
        mended: 'bar 5 chords G D9\n',
      },
      {
        mistake: 'a setting above the first bar',
        right: 'grid=16}\n',
        wrong: 'grid=16}\n⟦unreadable-line:key: E minor⟧\n',
        help: 'write `key="E minor"` in the braces of the part',
        mended: 'grid=16 key="E minor"}\n',
      },
      {
        mistake: 'a setting between bars',
        right: 'section Bridge\n',
        wrong: 'section Bridge\n⟦unreadable-line:tempo 92⟧\n',
        help: 'write `from 5 tempo 92` above bar 5',
        mended: 'section Bridge\nfrom 5 tempo 92\n',
      },
      {
        mistake: 'signs of a repeat',
        right: 'section Bridge\n',
        wrong: 'section Bridge\n⟦unreadable-line:|:⟧\n',
        help: 'write `repeat 1-4`, with the bars that are meant, on a line below them',
      },
      {
        mistake: 'words for the pupil in quotes',
        right: '  say 4: lightly',
        wrong: '  ⟦unreadable-line:"lightly"⟧',
        help: 'write `say: lightly`',
        mended: '  say: lightly',
      },
      {
        mistake: 'words for the pupil behind "note"',
        right: 'say 4: lightly',
        wrong: '⟦unreadable-line:note⟧: lightly',
        help: 'write `say`',
        mended: 'say: lightly',
      },
      {
        mistake: 'words for the pupil alone',
        right: '  say 4: lightly',
        wrong: '  ⟦unreadable-line:Play this very lightly⟧',
        help: 'write `say:` before words for the pupil, `//` before a note to yourself, or move it out of the part',
        mended: '  say: Play this very lightly',
      },
      {
        mistake: 'a pickup with its beat',
        right: 'bar 1 chords',
        wrong: 'pickup ⟦unreadable-line:4⟧\n  4: . . x x\nbar 1 chords',
        help: 'write `pickup` alone, and its beats below it, as in `4: x x`',
        mended: 'pickup\n  4: . . x x\nbar 1 chords',
      },
      {
        mistake: 'a comment behind a bar in another sign',
        right: 'bar 5\n',
        wrong: 'bar 5 ⟦unknown-setting:#⟧ slower\n',
        help: 'write `//` before a comment',
        mended: 'bar 5 // slower\n',
      },
    ],
  },
  {
    where: 'a part',
    mistakes: [
      {
        mistake: 'closed before its bars',
        right: 'More words',
        wrong: '⟦empty-part::::part{#end}⟧\n:::\n\nMore words',
        help: 'write its bars below this line, and `:::` below them',
        mended: ':::part{#end}\nbar 1\n  1-4 in 4: x x x x\n:::\n\nMore words',
        lost: 1,
      },
    ],
  },
]
