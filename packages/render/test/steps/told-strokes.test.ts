import { expect, test } from 'vitest'
import { cardWritten, type Written } from './written-steps.ts'

const KNOWN = 'bar 1\n  1: Em7 A9 G Em\n  2: Em7.open . . .\n  3: . . . .\n  4: . . . .\nbar 2\n'

/** What is told of a bar whose grips are known and whose last beats are scratched. */
function told(lines: string, written: Written = {}): string {
  return cardWritten(2, KNOWN + lines, written)
}

/** What is told of the first beat of such a bar. */
function beat(signs: string, written: Written = {}): string {
  const card = told(`  1: ${signs}\n  2: x x x x\n  3: x x x x\n  4: x x x x`, written)
  return card.match(/^1: (.*)$/m)?.[1] ?? card
}

test('strokes are told with their direction, alike ones side by side as one run', () => {
  expect(beat('Em7 Em7 Em7 Em7')).toBe('Strike Em7 down, up, down and up.')
  expect(beat('d:Em7 d:Em7 u:Em7 u:Em7')).toBe('Strike Em7 down, down, up and up.')
  expect(beat('d:Em7 d:Em7 x x')).toMatch(/^Strike Em7 down twice\./)
  expect(beat('Em7 Em7 Em7 Em7', { attributes: 'grid=16 stroke=down' })).toBe('Strike Em7 four times.')
})

test('a stroke on some strings names them', () => {
  expect(beat('Em7 Em7@1-3 - -')).toBe('Strike Em7 down. Catch only strings 1–3, up on ‘e’; let it last.')
  expect(beat('Em7@1-3 - - -')).toBe('Catch only strings 1–3 of Em7, down; let it last.')
  expect(beat('Em7@5 - - -', { attributes: 'grid=16 stroke=pluck' })).toBe('Pluck string 5 of Em7; let it last.')
})

test('what is struck again is named by its strings', () => {
  expect(beat('3@6(3) x 3@6(3) -')).toContain('Strike string 6 again, down on ‘and’')
  expect(beat('Em7+x@3 x Em7+x@3 -')).toContain('Strike the same strings again, down on ‘and’')
})

test('accents, ghosted and short strokes, vibrato, palm muting, rolled and plucked chords and dead strings are told', () => {
  expect(beat('Em7> - - -')).toContain('Strike Em7 down, with an accent; let it last.')
  expect(beat('Em7< - - -')).toContain('Strike Em7 down, softly;')
  expect(beat("Em7' . x x")).toContain('Strike Em7 down, short. Silence. Scratch down and up.')
  expect(beat('Em7~ - - -')).toContain('Strike Em7 down, with vibrato;')
  expect(beat('m:Em7 - - -')).toContain('Strike Em7 down, palm-muted;')
  expect(beat('r:Em7 - - -')).toContain('Strike Em7 down, rolled string by string;')
  expect(beat('Em7+x@3 - - -')).toContain('Em7 with dead string 3: strike down;')
  const plucked = { attributes: 'grid=16 stroke=pluck' }
  expect(beat('G - d:G -', plucked)).toBe('Pluck G; let it last. G down on ‘and’; let it last.')
})

test('scratches are told in runs, on the strings that are named', () => {
  expect(beat('x x x x')).toBe('Scratch down, up, down and up.')
  expect(beat('x@4-6 x> x x')).toBe('Scratch strings 4–6 down. Scratch up, with an accent. Scratch down and up.')
  expect(told('  1: Em7 - x x\n  2: A9 - - -\n  3: x x x x\n  4: x x x x')).toContain(
    'scratch down and up on ‘and’ while the hand travels to fret 11.',
  )
})

test('what easing is, is told where a part first asks for it, then only when to ease', () => {
  const first = cardWritten(1, 'bar 1\n  1: Em7 x x Em7\n  2: x x x x\n  3: Em7 - . .\n  4: . . . .')
  expect(first).toContain('To ease, stop pressing but keep the fingers on the strings. Ease: scratch up and down.')
  expect(first).toContain('Press again: Em7 up on ‘a’.')
  expect(first).toContain('Ease on ‘and’: the sound stops.\n4: Silence.')
  expect(first.match(/To ease/g)).toHaveLength(1)
  expect(first.match(/Press again/g)).toHaveLength(1)
})

test('open strings are stopped by the flat hand, a short stroke needs no easing', () => {
  expect(beat('Em - . x')).toContain('Stop the strings on ‘and’.')
  expect(beat('Em - x x')).toContain('Lay the fretting hand flat: scratch down and up on ‘and’.')
  expect(beat("Em7' x x x")).toBe('Strike Em7 down, short. Scratch up, down and up.')
})

test('a sound that lasts is told to the count at which it ends', () => {
  expect(told('  1: Em7 - - -\n  2: - - - -\n  3: - - x x\n  4: x x x x')).toContain('hold it through 2.')
  expect(told('  1: Em7_ - 0@6 -\n  2: - - . .\n  3: x x x x\n  4: x x x x')).toContain(
    'Strike Em7 down; let it ring through the ‘e’ of 2.',
  )
  expect(told('  1: x x x x\n  2: x x x x\n  3: x x x x\n  4: x x Em7 -\nbar 3\n  1-4 in 1: -')).toContain(
    'hold it over the bar line.',
  )
})

test('beats join where a sound crosses them, and what sounds over a number is told once', () => {
  const card = told('  1: x x x Em7\n  2: - x x Em7\n  3: - x x Em7\n  4: - x x x')
  expect(card).toContain('2: Em7 rings over the number while the hand swings past.')
  expect(card).toContain('3: As beat 2.')
  expect(told('  1: Em7 - - -\n  2: - - - -\n  3: x x x x\n  4: x x x x')).toContain('1–2: Strike Em7 down on 1;')
})

test('a new chord before its number comes early', () => {
  expect(told('  1: Em7 - - A9\n  2: - - x x\n  3: x x x x\n  4: x x x x')).toContain(
    'A9 comes early, up on ‘a’; hold it.',
  )
})

test('cuts are told before their first stroke, with their counts where these have names', () => {
  expect(told('  1 in 3: Em7 - Em7\n  2: x x x x\n  3: x x x x\n  4: x x x x')).toContain(
    '1: Split the beat into three even parts: 1 ‘and’ ‘a’. Strike Em7 down; let it last. Em7 up on ‘a’.',
  )
  expect(told('  1-2 in 3: Em7 A9 Em7\n  3: x x x x\n  4: x x x x')).toMatch(
    /1–2: Split beats 1 and 2 into three even parts\. Strike Em7 down on the first part\. A9 up on the second part\./,
  )
  expect(told('  1: x x (Em7 A9 Em7)2\n  2: x x x x\n  3: x x x x\n  4: x x x x')).toContain(
    'Split the time of ‘and’ and ‘a’ into three even parts.',
  )
})

test('a single string and open strings are struck, not caught or held first', () => {
  expect(beat('Em7@5 - - -')).toBe('Strike only string 5 of Em7, down; let it last.')
  expect(beat('0@6 0@5 - -')).toBe('Strike open string 6 down. Strike open string 5 up on ‘e’; let it last.')
  expect(beat('0@6 - 0@5+0@4 -', { attributes: 'grid=16 stroke=pluck' })).toBe(
    'Pluck open string 6; let it last. Pluck open strings 5 and 4 on ‘and’; let it last.',
  )
  expect(beat('0@6 0@5 - -', { language: 'de' })).toBe(
    'Schlag die leere Saite 6 abwärts. Schlag die leere Saite 5 auf ‚e‘ aufwärts; halt es aus.',
  )
})

test('a stroke in a plucked part is a brush', () => {
  const plucked = { attributes: 'grid=16 stroke=pluck' }
  expect(beat('d:G - u:G -', plucked)).toBe('Brush G down; let it last. G up on ‘and’; let it last.')
  expect(beat('d:G - u:G -', { ...plucked, language: 'de' })).toContain('Streich G abwärts;')
})

test('a sound that lasts slides away at its end, another at once', () => {
  expect(beat('Em7 - s:. .')).toContain('Strike Em7 down; let it last, then slide away.')
  expect(beat('Em7 s:. . .')).toContain('Strike Em7 down, then slide away.')
  expect(told('  1: Em7 - - -\n  2: - - - -\n  3: s:. . . .\n  4: x x x x')).toContain(
    'hold it through 2, then slide away.',
  )
})

test('strokes that fill a cut from its start on need no place, unless the same was said', () => {
  expect(told('  1-2 in 3: Em7 Em7 Em7\n  3-4 in 3: Em7 Em7 Em7')).toMatch(
    /^1–2: Split beats 1 and 2 into three even parts\. Strike Em7 down, up and down\.\n3–4: Split beats 3 and 4 into three even parts\. Em7 down, up and down\.$/m,
  )
  expect(told('  1-2 in 3: x x x\n  3-4 in 3: x x x')).toMatch(
    /Scratch down, up and down\.\n3–4: .*Scratch down, up and down on the first part\.$/m,
  )
})

test('a manner of several strokes told as one is said of each, in both languages', () => {
  expect(beat("Em7' Em7' x> x>")).toBe('Strike Em7 down and up, each short. Scratch down and up, each with an accent.')
  expect(beat("m:Em7>' m:Em7>' x x")).toContain('Strike Em7 down and up, palm-muted, each with an accent, short.')
  expect(beat("Em7' Em7' x> x>", { language: 'de' })).toBe(
    'Schlag Em7 abwärts und aufwärts, jeweils kurz. Schlag gedämpft abwärts und aufwärts, jeweils betont.',
  )
})
