import { expect, test } from 'vitest'
import { cardWritten } from './written-steps.ts'

/** What is told of one beat of sixteenths. */
function beat(signs: string): string {
  const card = cardWritten(1, `bar 1\n  1: ${signs}\n  2: x x x x\n  3: x x x x\n  4: x x x x`)
  return card.match(/^1: (.*)$/m)?.[1] ?? card
}

test('hammer-ons and pull-offs are told with finger, fret and string, and that nothing strikes them, once', () => {
  expect(beat('2@5(2) p:0@5 h:2@5(2) h:3@5(3)')).toBe(
    'Finger 2 at fret 2 on string 5: strike down. On ‘e’, pull off to open string 5; nothing strikes it. ' +
      'On ‘and’, hammer finger 2 onto fret 2 on string 5. On ‘a’, hammer finger 3 onto fret 3 on string 5.',
  )
})

test('two fingers hammered together are told in one sentence', () => {
  expect(beat('Em7.open h:Em7 x x')).toContain(
    'On ‘e’, hammer finger 3 onto fret 9 on string 4 and finger 2 onto fret 8 on string 2; nothing strikes them.',
  )
})

test('slides are told with where they go, those of all that sounds by how far', () => {
  expect(beat('5@3(1) s:7@3(1) - -')).toContain('On ‘e’, slide finger 1 to fret 7 on string 3; nothing strikes it;')
  expect(beat('11@3(3)+10@2(2) s:9@3+8@2 - -')).toContain('On ‘e’, slide both down two frets; nothing strikes them;')
  expect(beat('Em7 s:Em7^-1 - -')).toContain('On ‘e’, slide the whole shape down one fret; nothing strikes it;')
})

test('slides into a stroke and away from it are told with the stroke', () => {
  expect(beat('x x ds:Em7 -')).toContain('Em7: strike down on ‘and’ and slide up into place from just below;')
  expect(beat('Em7^-2 x ds:Em7 -')).toContain('strike down on ‘and’ and slide up into place from just below;')
  expect(beat('3@6(3) s:. x x')).toContain('Finger 3 at fret 3 on string 6: strike down, then slide away.')
})

test('strings that slide in from frets of their own follow in a sentence', () => {
  expect(beat('5@3(1)+5@2(1) ds:7@3+8@2 - -')).toContain(
    'Strike both down on ‘e’ and slide into place; let it last. Slide strings 3 and 2 from fret 5.',
  )
})

test('a finger that is added is told, and that it leaves', () => {
  expect(beat('Em7 Em7+10@2(4) Em7 -')).toContain(
    'Strike Em7 down. Add finger 4 at fret 10 on string 2: strike up on ‘e’. Lift finger 4. Em7 down on ‘and’;',
  )
})

test('a shape moved as a whole is told by how far, and its way back', () => {
  expect(beat('Em7 Em7^-1 Em7 -')).toContain(
    'The whole shape one fret down: strike up on ‘e’. Straight back: strike down on ‘and’;',
  )
  expect(beat('Em7^+2 - - -')).toContain('Em7 moved two frets up: strike down;')
})

test('strings that the fretting hand leaves unheard are told to stop', () => {
  expect(beat('A9 p:Em7.open - -')).toMatch(/^A9.*On ‘e’, pull off to .*String 1 stops\./)
})

/** A barre chord, whose fourth finger is wanted on another string. */
const BARRE = 'A 5 7 7 6 5 5 fingers 1 3 4 2 1 1'

test('where an added note takes a finger from the shape, it is told which finger takes its string over, and that it goes back', () => {
  const told = cardWritten(1, 'bar 1\n  1: A A+7@2\n  2: A A\n  3: A+7@2 A@2-3\n  4: x x', {
    attributes: 'grid=8',
    shapes: BARRE,
  })
  expect(told).toContain(
    'Strike A down. Finger 3 takes over string 4. Add finger 4 at fret 7 on string 2: strike up on ‘and’.\n' +
      '2: Finger 4 goes back to string 4. A down and up.\n' +
      '3: Finger 3 takes over string 4 on 3. Add finger 4 at fret 7 on string 2: strike down on 3. ' +
      'Finger 4 goes back to string 4 on ‘and’. Catch only strings 3 and 2, up on ‘and’.',
  )
})

test('a finger that was added is lifted before the strings it was on are struck without it, each time with its place', () => {
  const told = cardWritten(1, 'bar 1\n  1: Em7 Em7+10@2(4)\n  2: Em7@4-5 Em7@1-2\n  3: Em7+10@2(4) Em7\n  4: x x', {
    attributes: 'grid=8',
  })
  expect(told).toMatch(
    /^2: Catch only strings 5 and 4, down\. Lift finger 4\. Catch only strings 2 and 1, up on ‘and’\.$/m,
  )
  expect(told).toContain('Lift finger 4 on ‘and’. Em7 up on ‘and’.')
})

test('German tells who takes a string over with its own words', () => {
  const told = cardWritten(1, 'bar 1\n  1: A A+7@2\n  2: A A\n  3: x x\n  4: x x', {
    attributes: 'grid=8',
    shapes: BARRE,
    language: 'de',
    strings: 'names',
  })
  expect(told).toContain('Finger 3 übernimmt die D-Saite.')
  expect(told).toContain('Finger 4 geht zurück auf die D-Saite.')
})
