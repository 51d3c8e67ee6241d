import { expect, test } from 'vitest'
import { cardWritten, headWritten, stepsWritten, type Written } from './written-steps.ts'

const QUARTERS: Written = { attributes: 'grid=4' }
const EIGHTHS: Written = { attributes: 'grid=8' }

/** The beats of a bar's card, a line each, without the shapes' fingers. */
function beats(bar: number, lines: string, written: Written): readonly string[] {
  return cardWritten(bar, lines, written)
    .split('\n')
    .filter((line) => /^[\d–]+: /.test(line))
    .map((line) => line.replace(/: .*(?=Strike G)/, ': '))
}

test('a beginner’s bar of four equal strokes is told by its first beat, in every grid', () => {
  expect(beats(1, 'bar 1\n  1: G\n  2: G\n  3: G\n  4: G', QUARTERS)).toEqual([
    '1: Strike G down.',
    '2–4: Each as beat 1.',
  ])
  expect(beats(1, 'bar 1\n  1: G -\n  2: G -\n  3: G -\n  4: G -', EIGHTHS)).toEqual([
    '1: Strike G down; let it last.',
    '2–4: Each as beat 1.',
  ])
  expect(beats(1, 'bar 1\n  1: G - - -\n  2: G - - -\n  3: G - - -\n  4: G - - -', {})).toEqual([
    '1: Strike G down; let it last.',
    '2–4: Each as beat 1.',
  ])
  expect(beats(1, 'bar 1\n  1: x\n  2: x\n  3: x\n  4: x', QUARTERS)).toEqual([
    '1: Scratch down.',
    '2–4: Each as beat 1.',
  ])
})

test('two equal beats of one stroke are each told: their words are as short', () => {
  expect(beats(1, 'bar 1\n  1: G\n  2: G\n  3: Em\n  4: .', QUARTERS).slice(0, 2)).toEqual([
    '1: Strike G down.',
    '2: G down.',
  ])
})

test('beats that repeat those before them in order are told by them as one', () => {
  expect(beats(1, 'bar 1\n  1: G\n  2: x\n  3: G\n  4: x', QUARTERS).at(-1)).toBe('3–4: As beats 1 and 2.')
  expect(beats(1, 'bar 1\n  1: G\n  2: .\n  3: G\n  4: .', QUARTERS).at(-1)).toBe('3–4: As beats 1 and 2.')
  const six = { attributes: 'grid=8 time=6/8 stroke=down' }
  expect(beats(1, 'bar 1\n  1: G\n  2: x\n  3: x\n  4: G\n  5: x\n  6: x', six).at(-1)).toBe('4–6: As beats 1–3.')
  expect(beats(1, 'bar 1\n  1: G\n  2: x\n  3: G\n  4: x\n  5: G\n  6: x', six).slice(2)).toEqual([
    '3–6: As beats 1 and 2, twice.',
  ])
})

test('German tells repeated beats with its own words', () => {
  const german = { ...QUARTERS, language: 'de' as const }
  expect(cardWritten(1, 'bar 1\n  1: G\n  2: x\n  3: G\n  4: x', german)).toContain('3–4: Wie die Zählzeiten 1 und 2.')
  expect(cardWritten(1, 'bar 1\n  1: .\n  2: .\n  3: .\n  4: .', german)).toContain('Stille, den ganzen Takt lang.')
})

test('where the hand swings in quarters it is told to go down on every count', () => {
  expect(headWritten('bar 1\n  1: G\n  2: G\n  3: G\n  4: G', QUARTERS)).toContain(
    'Count 4/4 as 1 2 3 4. The strumming hand goes down on every count and back up in between.',
  )
  const mixed = 'bar 1\n  1: G\n  2: G\n  3: G\n  4: G\nbar 2 grid 8\n  1: G G\n  2: G -\n  3: G G\n  4: . .'
  expect(cardWritten(2, mixed, QUARTERS)).toContain('The strumming hand swings down and up.')
})

test('a sound from the bar before that fills its last beat goes on through that beat', () => {
  const lines = 'bar 1\n  1: G -\n  2: - -\nbar 2\n  1: - -\n  2: . .'
  expect(cardWritten(2, lines, { attributes: 'grid=8 time=2/4' })).toContain(
    '1–2: The sound from the bar before rings through 1. Silence on 2.',
  )
})

test('a bar of silence is told as one', () => {
  expect(beats(2, 'bar 1\n  1: G\n  2: G\n  3: G\n  4: G\nbar 2\n  1: .\n  2: .\n  3: .\n  4: .', QUARTERS)).toEqual([
    '1–4: Silence for the whole bar.',
  ])
})

test('a short stroke is not told to last, however long its place', () => {
  const bar = "bar 1\n  1-2 in 1: G'\n  3: G' .\n  4: (G')2"
  expect(cardWritten(1, bar, EIGHTHS)).not.toMatch(/short; (?:let|hold)/)
})

test('a bar in which nothing begins is told by itself, not by another bar', () => {
  const two = { attributes: 'grid=8 time=2/4' }
  const lines = 'bar 1\n  1: G -\n  2: - -\nbar 2\n  1-2 in 1: -\nbar 3\n  1: Em -\n  2: - -\nbar 4\n  1-2 in 1: -'
  expect(beats(4, lines, two)).toEqual(['1–2: Let the sound from the bar before ring through the whole bar.'])
  expect(stepsWritten(lines, two).cards.map((card) => card.as?.bar ?? null)).toEqual([null, null, 1, null])
})

test('a bar that differs by a sound that goes on is told from where that sound begins', () => {
  const rest = '  1: G x\n  2: x x\n'
  const lines = `bar 1\n${rest}  3: G -\n  4: x x\nbar 2\n${rest}  3: G -\n  4: - -`
  expect(cardWritten(2, lines, EIGHTHS)).toMatch(
    /^As bar 1 to the end of beat 2, then:\n3–4: Strike G down on 3; hold it through 4\.$/m,
  )
  const other = 'bar 1\n  1: G -\n  2: - -\n  3: - -\n  4: - -\nbar 2\n  1: G -\n  2: - -\n  3: Em -\n  4: - -'
  expect(cardWritten(2, other, EIGHTHS)).toMatch(/^As bar 1 to the end of beat 2, then:\n3–4: /m)
})

test('a bar with other shapes and a beat of its own is told by another only where that spares four strokes', () => {
  const plain = 'bar 1\n  1: G\n  2: G\n  3: G\n  4: G\nbar 2\n  1: Em\n  2: Em\n  3: A9\n  4: A9'
  expect(stepsWritten(plain, QUARTERS).cards[1]!.asText).toBe('')
  const full = 'bar 1\n  1: G G\n  2: G G\n  3: G G\n  4: G G\nbar 2\n  1: Em Em\n  2: Em Em\n  3: Em Em\n  4: G G'
  expect(stepsWritten(full, EIGHTHS).cards[1]!.asText).toBe('As bar 1 to the end of beat 3, with Em for G, then:')
})

test('a silence that begins in a beat ends with it, so that strokes off the beat repeat in words', () => {
  expect(beats(1, "bar 1\n  1: . .\n  2: G' .\n  3: . .\n  4: G' .", EIGHTHS)).toEqual([
    '1: Silence.',
    '2: Strike G down, short. Silence on ‘and’.',
    '3–4: As beats 1 and 2.',
  ])
  // From a beat's start on it is one.
  expect(beats(1, 'bar 1\n  1: G -\n  2: - .\n  3: . .\n  4: . .', EIGHTHS).at(-1)).toBe('3–4: Silence on 3.')
})

test('a beat whose last sound goes on over the next is not told by one whose sound ends', () => {
  const island = 'bar 1\n  1: G -\n  2: G G\n  3: - G\n  4: G G\nbar 2\n  1: G -\n  2: G G\n  3: - G\n  4: G G'
  expect(beats(1, island, EIGHTHS)).toEqual([
    '1: Strike G down; let it last.',
    '2: G down. G up on ‘and’; hold it.',
    '3: G rings over the number while the hand swings past. G up on ‘and’.',
    '4: G down and up.',
  ])
})

test('a bar whose last sound goes on over the bar line is told apart from one where it ends', () => {
  const start = 'bar 1\n  1: G -\n  2: x x\n  3: G x\n  4: x G\nbar 2\n  1: - x\n  2: x x\n  3: G x\n'
  expect(cardWritten(3, `${start}  4: x x\nbar 3\n  1: G -\n  2: x x\n  3: G x\n  4: x G`, EIGHTHS)).toMatch(
    /^As bar 1 to the end of beat 3, then:\n4: Scratch down\. Strike G up on ‘and’\.$/m,
  )
})

test('a beat that another bar tells by one that differs is told itself', () => {
  const lines = 'bar 1\n  1: G G\n  2: x x\n  3: G G\n  4: x x\nbar 2\n  1: G x\n  2: x x\n  3: G G\n  4: x x'
  const steps = stepsWritten(lines, EIGHTHS)
  expect(steps.cards[0]!.items.at(-1)!.label).toBe('3–4')
  expect(steps.cards[1]!.asText).toBe('')
})

test('another way to play one of several beats that repeat together follows all of them', () => {
  const card = cardWritten(1, 'bar 1\n  1: G\n  2: x\n  3: G\n  4: x\n  or 3: Em', QUARTERS)
  expect(card).toMatch(/^3–4: As beats 1 and 2\.\nor: Another way for beat 3\. Em: /m)
})
