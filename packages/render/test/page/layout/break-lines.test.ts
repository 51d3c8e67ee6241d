import { openFonts } from '@barwise/render'
import { expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { breakLines } from '../../../src/page/layout/break-lines.ts'
import { say } from '../../../src/page/layout/text-run.ts'

const fonts = openFonts(fontBytes())
const PROSE =
  'Keep the strumming hand moving like a pendulum, even when it strikes nothing. It swings sixteen times a bar: down on every number and every “and”, up on every “e” and “a”. It never waits for a chord.'

function lines(text: string, width: number, hyphenate?: (word: string) => readonly string[]) {
  return breakLines([say(text, 'serif', 10.5)], { fonts, width, ...(hyphenate === undefined ? {} : { hyphenate }) })
}

function wordsOf(found: ReturnType<typeof breakLines>): string[] {
  return found.map((line) => line.fragments.map((fragment) => fragment.text).join(''))
}

test('no line is wider than the measure', () => {
  for (const width of [120, 218, 346]) {
    for (const line of lines(PROSE, width)) expect(line.width).toBeLessThanOrEqual(width + 0.01)
  }
})

test('lines keep every word in order', () => {
  expect(wordsOf(lines(PROSE, 218)).join(' ')).toBe(PROSE)
})

test('the lines of a paragraph are even: none but the last is shorter than two thirds of the measure', () => {
  const found = lines(PROSE, 218)
  for (const line of found.slice(0, -1)) expect(line.width).toBeGreaterThan(218 * 0.66)
})

test('a no-break space holds a word and its number on one line', () => {
  for (let width = 60; width < 220; width += 7) {
    expect(wordsOf(lines('Look for fret\u00a07 and string\u00a05 and bar\u00a0112 here', width)).join('|')).not.toMatch(
      /(fret|string|bar)\|/,
    )
  }
})

test('a word is hyphenated only where the line would else be very short', () => {
  const hyphenate = (word: string): readonly string[] =>
    word === 'accompaniments' ? ['accom', 'pani', 'ments'] : [word]
  const narrow = lines('the accompaniments grow', 58, hyphenate)
  expect(narrow.some((line) => line.ends === 'hyphen')).toBe(true)
  const wide = lines('the accompaniments grow', 300, hyphenate)
  expect(wide).toHaveLength(1)
})

test('a line ends after a hyphen that the writer typed', () => {
  expect(wordsOf(lines('two-string', 30))).toEqual(['two-', 'string'])
})

test('a word longer than the line is cut where the line is full', () => {
  const address = 'https://example.org/a/very/long/address/that/fits/no/line'
  const found = lines(`See ${address} there`, 90)
  for (const line of found) expect(line.width).toBeLessThanOrEqual(90.01)
  expect(wordsOf(found).join('').replaceAll(' ', '')).toBe(`See${address}there`)
})

test('a short word is cut too where a narrow column does not hold it', () => {
  const found = lines('Anschlag ab', 30)
  for (const line of found) expect(line.width).toBeLessThanOrEqual(30.01)
  expect(wordsOf(found).join('').replaceAll(' ', '')).toBe('Anschlagab')
})

test('true signs come from the face that stands well among letters', () => {
  const [line] = lines('B♭ and F♯', 200)
  expect(line?.fragments.map((fragment) => fragment.face)).toEqual(['serif', 'music-text', 'serif', 'music-text'])
})

test('a character no font holds is told and left out', () => {
  const told: string[] = []
  const found = breakLines([say('a 福 b', 'serif', 10)], {
    fonts,
    width: 100,
    missing: (characters) => told.push(...characters),
  })
  expect(told).toEqual(['福'])
  expect(wordsOf(found)[0]).not.toContain('福')
})

test('where only wide words may be cut, a word that a line holds stays whole, and one that it does not is hyphenated', () => {
  const hyphenate = (word: string): readonly string[] =>
    word === 'accompaniments' ? ['accom', 'pani', 'ments'] : [word]
  const at = (width: number): readonly string[] =>
    wordsOf(
      breakLines([say('the accompaniments grow', 'serif', 10.5)], { fonts, width, hyphenate, wideOnly: true }),
    ).map((line) => line.trim())
  const whole = fonts.measure('serif', 10.5, 'accompaniments').width
  expect(at(whole + 1)).toEqual(['the', 'accompaniments', 'grow'])
  expect(at(whole - 1).some((line) => line.endsWith('-'))).toBe(true)
})
