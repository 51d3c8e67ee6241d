import { buildLesson, type PartPlan, shape } from './score-builder.ts'

export const FERRY_SHAPES = [
  shape('Em7', 'x 7 9 7 8 7', 'x 1 3 1 2 1'),
  shape('A9', 'x 12 11 12 12 12', 'x 2 1 3 3 3'),
  shape('Em7.open', 'x 7 7 7 7 x', 'x 1 1 1 1 x', 'Em7'),
]

const ONE = 'Em7 x x Em7 | x x A9 - |'

export const FERRY_PLAN: PartPlan = {
  shapes: FERRY_SHAPES,
  pickup: { firstBeat: 3, signs: '. . x x' },
  bars: [
    {
      signs: `${ONE} - x A9' x | x A9@1,2,3 x x`,
      remarks: [{ at: 2 * 3360, text: 'let the ninth chord go as soon as it has spoken', span: {} as never }],
    },
    { signs: `${ONE} - x A9^-1 A9 | x 11@3+10@2 s:9@3+8@2 x`, or: { slot: 12, signs: 'x 9@3+8@2 - x' } },
    { signs: `${ONE} - x A9' x | x A9@1,2,3 x x` },
    {
      signs: 'Em7.open h:Em7 x Em7 | x Em7 - Em7+10@2 | - - x x | x x ds:Em7 -',
      remarks: [{ at: 0, text: 'hear the hammer as a sixteenth, not as a grace note', span: {} as never }],
    },
    { signs: `${ONE} - x A9' x | x A9@1,2,3 x x` },
    { signs: `${ONE} - x A9^-1 A9 | x 11@3+10@2 s:9@3+8@2 x` },
    { signs: `${ONE} - x A9' x | x A9@1,2,3 x x` },
    { signs: 'Em7.open h:Em7 x Em7 | x Em7 - Em7+10@2 | x x ds:Em7 - | - - . .' },
  ],
}

export function ferryQueue(strings: 'names' | 'numbers' = 'numbers'): ReturnType<typeof buildLesson> {
  return buildLesson({ ...FERRY_PLAN, strings })
}
