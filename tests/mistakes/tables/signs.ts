import type { MistakeGroup } from '../one-mistake.ts'

export const SIGNS: readonly MistakeGroup[] = [
  {
    where: 'a stroke sign',
    mistakes: [
      {
        mistake: 'names a shape that is not there',
        right: '2: G x x x',
        wrong: '2: ⟦unknown-shape:F⟧ x x x',
        help: 'add `F` to the shapes of the lesson, or use `Am7`, `D9` or `G`',
      },
      {
        mistake: 'names a shape in small letters',
        right: '1: Am7 x x Am7',
        wrong: '1: ⟦unknown-shape:am7⟧ x x Am7',
        help: 'write `Am7`',
      },
      {
        mistake: 'names a chord near one that is there',
        right: '1: Am7 x x Am7',
        wrong: '1: ⟦unknown-shape:Am8⟧ x x Am7',
        help: 'write `Am7`, or add `Am8` to the shapes',
      },
      {
        mistake: 'names B as it is called in German',
        right: '2: G x x x',
        wrong: '2: ⟦unknown-shape:H7⟧ x x x',
        help: 'write `B7` (H is B here), and add `B7` to the shapes',
      },
      {
        mistake: 'has a Cyrillic letter that looks like an x',
        right: '2: G x x x',
        wrong: '2: G ⟦strange-character:х⟧ x x',
        help: 'type `x` in its place',
      },
      {
        mistake: 'has a Cyrillic letter that looks like an A, again and again',
        right: '1: Am7 x x Am7\n  2: x x Am7^+1 -',
        wrong: '1: ⟦strange-character:А⟧m7 x x Аm7\n  2: x x Аm7^+1 -',
        help: 'type `A` in its place',
      },
      {
        mistake: 'has a space without width behind it',
        right: '2: G x x x',
        wrong: '2: G⟦strange-character:\u200b⟧ x x x',
        help: 'delete it: go behind it and press backspace once',
      },
      {
        mistake: 'is a picture',
        right: '2: G x x x',
        wrong: '2: G ⟦unreadable-stroke:🎸⟧ x x',
        help: 'write a shape, a note such as `12@3`, `x`, `-` or `.`',
      },
      {
        mistake: 'is a capital X, three times',
        right: '2: G x x x',
        wrong: '2: G ⟦capital-x:X⟧ X X',
        help: 'write `x`',
      },
      {
        mistake: 'has its accent in front',
        right: '2: G x x x',
        wrong: '2: ⟦unreadable-stroke:>G⟧ x x x',
        help: 'write marks behind the sign: `G>`',
        mended: '2: G> x x x',
      },
      {
        mistake: 'lacks the colon of its hammer-on',
        right: 'h:7@2',
        wrong: '⟦unreadable-stroke:h⟧7@2',
        help: 'write `h:7@2`',
      },
      {
        mistake: 'has a hammer-on as one word',
        right: 'x 5@2 h:7@2 -',
        wrong: 'x ⟦unreadable-stroke:5h7@2⟧ x -',
        help: 'write two signs, each with its string: `5@2 h:7@2`',
      },
      {
        mistake: 'lacks the colon of its downstroke',
        right: '2: G x x x',
        wrong: '2: ⟦unreadable-stroke:d⟧G x x x',
        help: 'write `d:G`',
        mended: '2: d:G x x x',
      },
      {
        mistake: 'has a capital action',
        right: '2: G x x x',
        wrong: '2: ⟦unknown-action:D⟧:G x x x',
        help: 'write `d`',
        mended: '2: d:G x x x',
      },
      {
        mistake: 'has an arrow for its direction',
        right: '2: G x x x',
        wrong: '2: G⟦unreadable-stroke:↓⟧ x x x',
        help: 'write `d:` before it, where the hand does not go that way by itself',
      },
      {
        mistake: 'has a fret and no string',
        right: 'x 5@2 h:7@2 -',
        wrong: 'x ⟦fret-needs-string:5⟧ h:7@2 -',
        help: 'write `5@1` for fret 5 on string 1',
        mended: 'x 5@2 h:7@2 -',
      },
      {
        mistake: 'has a slash between fret and string',
        right: 'x 5@2 h:7@2 -',
        wrong: 'x ⟦unreadable-stroke:5/2⟧ h:7@2 -',
        help: 'write `5@2` for fret 5 on string 2',
      },
      {
        mistake: 'has the name of a string',
        right: 'x 5@2 h:7@2 -',
        wrong: 'x ⟦unreadable-stroke:5@B⟧ h:7@2 -',
        help: 'name the string by its number, 1 for the thinnest: `5@2`',
      },
      {
        mistake: 'has a comma behind it',
        right: '2: G x x x',
        wrong: '2: G⟦unreadable-stroke:,⟧ x x x',
        help: 'put only spaces between them',
      },
      {
        mistake: 'moves a shape without saying which way',
        right: 'Am7^+1',
        wrong: 'Am7⟦unreadable-stroke:^1⟧',
        help: 'write `^+2` or `^-1`: a sign and a number',
      },
    ],
  },
]
