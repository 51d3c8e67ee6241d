import { expect, test } from 'vitest'
import { plainText } from '../../src/steps/index.ts'
import { cardWritten, headWritten, stepsWritten } from './written-steps.ts'

const BAR = '  1: Em7 - - -\n  2: x x x x\n  3: Em7@2-4 - x x\n  4: Em7 . . .'
const TRIPLETS = '  1-4 in 12: Em7 - Em7 Em7 - Em7 Em7 - Em7 Em7 - Em7'

/** The lines of bars that have no card. */
function lines(text: string): readonly string[] {
  const steps = stepsWritten(text)
  return steps.lines.map((line) => `${line.lead} ${plainText(line.text, steps.andWord)}`)
}

test('the form of a part is told at its head: bars, different ones, sections, repeats, endings, a pickup', () => {
  const form = headWritten(
    `pickup\n  4: . . x x\nsection A\nbar 1\n${BAR}\nbar 2-3 = bar 1\nsection B\nbar 4 = bar 1 with A9 for Em7\n` +
      'bar 5 = bar 1\nrepeat 1-4 times 3\nending 1-2 bars 4-4\nending 3 bars 5-5',
  )
  expect(form).toContain(
    'Five bars, two different ones, after a pickup. A: bars 1–3. B: bars 4–5. Bars 1–3 are played three times. ' +
      'Endings 1 and 2: bar 4. Ending 3: bar 5.',
  )
  expect(headWritten(`bar 1\n${BAR}\nbar 2-16 = bar 1`)).toContain('Sixteen bars, all the same.')
})

test('sameness is found, not only copied', () => {
  expect(lines(`bar 1\n${BAR}\nbar 2\n${BAR}`)).toEqual(['Bar 2 is bar 1 again.'])
  expect(lines(`bar 1\n${BAR}\nbar 2 = bar 1 with A9 for Em7\nbar 3-4 = bar 1`)).toEqual([
    'Bars 3 and 4 are bar 1 again.',
  ])
})

test('a run of bars that repeats a run is told as one', () => {
  const four = `bar 1\n${BAR}\nbar 2 = bar 1\n  4: x x x x\nbar 3 = bar 1\nbar 4 = bar 1\n  4: x x . .\n`
  expect(lines(`${four}bar 5-8 = bar 1-4`)).toEqual(['Bar 3 is bar 1 again.', 'Bars 5–8 repeat bars 1–4.'])
})

test('a bar that differs from another in a beat or two is told by it', () => {
  const copy = (beats: string): string => cardWritten(2, `bar 1\n${BAR}\nbar 2 = bar 1\n${beats}`)
  expect(copy('  4: x x x x')).toMatch(/^As bar 1 to the end of beat 3, then:\n4: Scratch/m)
  expect(copy('  2: Em7 x x x')).toMatch(/^As bar 1, but beat 2:\n2: /m)
  expect(copy('  1: x x x x\n  2: Em7 x x x')).toMatch(/^As bar 1, but beats 1 and 2:\n1: /m)
})

test('a bar that is another with other shapes is told by their names, and only a new grip is described', () => {
  const text = `bar 1\n${BAR}\nbar 2 = bar 1 with A9 for Em7\nbar 3\n  1-4 in 1: G\nbar 4 = bar 1 with G for Em7\n`
  const steps = stepsWritten(text)
  const card = steps.cards.find(({ bar }) => bar === 2)!
  expect(card.as).toEqual({
    bar: 1,
    exchanges: [{ shape: 'A9', inPlaceOf: 'Em7' }],
    untilTicks: 13440,
    fromTicks: 13440,
  })
  expect([card.fromTicks, card.toTicks]).toEqual([0, 13440])
  expect(card.asText).toBe('As bar 1, with A9 for Em7.')
  expect(card.items.map(({ kind, label }) => [kind, label])).toEqual([['shapes', '']])
})

test('shapes are exchanged together with a beat that differs', () => {
  const text = `bar 1\n${BAR}\nbar 2 = bar 1 with A9 for Em7\n  4: x x x x`
  expect(cardWritten(2, text)).toMatch(/^As bar 1 to the end of beat 3, with A9 for Em7, then:\nA9: .*\n4: Scratch/m)
})

test('a bar is told in full where its strings, its way of stopping or its travel would differ', () => {
  const asOf = (shape: string, bar = BAR): string =>
    stepsWritten(`bar 1\n${bar}\nbar 2 = bar 1 with ${shape} for Em7`).cards.find((card) => card.bar === 2)!.asText
  expect(asOf('A9')).not.toBe('')
  expect(asOf('A9', '  1: Em7 - - -\n  2: Em7 x x x\n  3: x x x x\n  4: Em7@1 . . .')).not.toBe('')
  // Open strings are stopped by the flat hand, pressed ones by easing.
  expect(asOf('Em')).toBe('')
  // String 1 is silent in Em7.open.
  expect(asOf('Em7.open', '  1: Em7@1-3 - - -\n  2: Em7@1-2 - - -\n  3: Em7@1-3 - - -\n  4: Em7@1-2 - - -')).toBe('')
})

test('no bar is told by one that is itself told by other shapes and beats of its own', () => {
  const text = `bar 1\n${BAR}\nbar 2 = bar 1 with A9 for Em7\n  4: x x x x\nbar 3 = bar 2\n  1: x x x x`
  const steps = stepsWritten(text)
  expect(steps.cards.map((card) => card.as?.bar ?? null)).toEqual([null, 1, null])
})

test('two shapes are exchanged for two others', () => {
  const bar = '  1: Em7 - A9 -\n  2: x x x x\n  3: Em7 - A9 -\n  4: x x x x'
  const shapes = [
    'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1',
    'A9 x 9 8 9 9 9 fingers x 2 1 3 3 3',
    'Fm7 x 8 10 8 9 8 fingers x 1 3 1 2 1',
    'Bb9 x 10 9 10 10 10 fingers x 2 1 3 3 3',
  ].join('\n')
  const card = cardWritten(2, `bar 1\n${bar}\nbar 2 = bar 1 with Fm7 for Em7, Bb9 for A9`, { shapes })
  expect(card).toContain('As bar 1, with Fm7 for Em7 and B♭9 for A9.')
})

test('a part whose beats are nearly all cut alike is counted so at its head, and the odd bar says its own count', () => {
  const text = `bar 1\n${TRIPLETS}\nbar 2-3 = bar 1\nbar 4 = bar 1 with A9 for Em7\nbar 5\n${BAR}`
  expect(headWritten(text, { attributes: 'grid=16' })).toContain(
    'Each beat splits into three even parts. Count 4/4 as 1 ‘and’ ‘a’ 2 ‘and’ ‘a’ 3 ‘and’ ‘a’ 4 ‘and’ ‘a’.',
  )
  expect(cardWritten(1, text)).not.toMatch(/split|Count/i)
  expect(cardWritten(5, text)).toContain('Count this bar of 4/4 as 1 ‘e’ ‘and’ ‘a’ 2')
  const straight = `bar 1\n${BAR}\nbar 2\n${TRIPLETS}`
  expect(headWritten(straight)).not.toContain('splits')
  expect(cardWritten(2, straight)).toContain('Each beat splits into three even parts. Count this bar of 4/4 as 1')
})

test('a beat with more places than counts says how many strokes a count has room for', () => {
  expect(
    headWritten('bar 1\n  1: G - - - G G\n  2: G - - - - -', { attributes: 'grid=16 time=6/8 count=2' }),
  ).toContain('Count 6/8 as 1 ‘and’ ‘a’ 2 ‘and’ ‘a’. Each count has room for two even strokes.')
})

test('how a part is struck and swung is told at its head, and where it changes', () => {
  const text = `from 1 feel swing 8\nbar 1\n${BAR}\nfrom 2 stroke down feel straight\nbar 2\n${BAR}`
  expect(headWritten(text)).toContain('The strumming hand swings down and up. Swing: each ‘and’ comes late')
  expect(cardWritten(2, text)).toContain('Every stroke goes down. The counts come evenly here.')
})

test('chord symbols that no grip says are told, each where it begins', () => {
  const notes = '  1: 3@6 - - -\n  2: - - - -\n  3: 0@5 - - -\n  4: . . . .'
  expect(cardWritten(1, `bar 1 chords G - Am .\n${notes}`)).toContain('Chords: G, Am on 3 and no chord on 4.')
  expect(cardWritten(1, `bar 1 chords G G - G\n${notes}`)).toContain('Chord: G.')
  expect(cardWritten(1, `bar 1 chords Em7\n${BAR}`)).not.toContain('Chord')
  expect(cardWritten(2, `bar 1 chords G\n${notes}\nbar 2 = bar 1\n  4: x x x x`)).not.toContain('Chord')
})

test('other ways to play a beat follow it, the easier one called so, each with its beat where that is not clear', () => {
  const card = cardWritten(
    1,
    `bar 1\n  1: Em7 Em7 Em7 Em7\n  2: x x x x\n  3: x x x x\n  4: x x x x\n  or 1: Em7 - - -\n  or 1-2 in 2: Em7 Em7`,
  )
  expect(card).toContain('or: Easier: Em7 down; let it last.')
  expect(card).toMatch(/^or: Another way for beats 1–2: Em7 down on 1; let it last\./m)
})

test('remarks stand at their beat in quotation marks, with a capital and a full stop, their own quotations inside', () => {
  const card = cardWritten(1, `bar 1\n${BAR}\n  say 2: keep the wrist loose\n  say: think "long"`)
  expect(card).toMatch(/^2: .*“Keep the wrist loose\.”$/m)
  expect(card).toContain('“Think ‘long’.”')
})

test('a copied bar that has remarks or other ways of its own tells them in a line', () => {
  expect(lines(`bar 1\n${BAR}\nbar 2 = bar 1\n  say: slower now`)).toContain('Bar 2: “Slower now.”')
  expect(lines(`bar 1\n${BAR}\nbar 2 = bar 1\n  or 1: Em7 - A9 -`).at(-1)).toMatch(
    /^Bar 2: Another way for beat 1: strike Em7 down; let it last\. A9: .* A9 down on ‘and’; let it last\.$/,
  )
})

test('each card has a rhythm to say that matches its slots', () => {
  const steps = stepsWritten(`bar 1\n  1: Em7 - x Em7\n  2: . . ds:Em7 -\n  3: 2@5 h:3@5 p:2@5 -\n  4: x x x x`)
  expect(steps.cards[0]!.rhythm).toBe('Say: DOWN – chick UP | . . DOWN – | DOWN on off – | chick chick chick chick')
})
