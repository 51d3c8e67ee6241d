import { expect, test } from 'vitest'
import { holdCounts, holdNumbers, setPlain } from '../../../src/page/document/typography.ts'
import { pageWords } from '../../../src/page/document/words-of-language.ts'

const WORDS = pageWords('en')

test('a number stays with the word it counts', () => {
  expect(holdNumbers('finger 2 onto fret 7 on string 5', WORDS)).toBe('finger\u00a02 onto fret\u00a07 on string\u00a05')
})

test('straight quotation marks become true ones', () => {
  expect(setPlain('nobody else\'s "leave"', WORDS)).toBe('nobody else’s “leave”')
})

test('German marks stand low and high, and an apostrophe is none of them', () => {
  const german = pageWords('de')
  expect(setPlain('Er sagt: "\'Geht\'s los?\' ruft sie." Und: "Ja."', german)).toBe(
    'Er sagt: „‚Geht’s los?‘ ruft sie.“ Und: „Ja.“',
  )
})

test('marks inside marks close in their order', () => {
  expect(setPlain('"She calls \'come\'"', WORDS)).toBe('“She calls ‘come’”')
})

test('in German a number stays with its word on either side', () => {
  expect(holdNumbers('Finger 2 im 7. Bund auf Saite 5, Takt 3 und 4', pageWords('de'))).toBe(
    'Finger\u00a02 im 7.\u00a0Bund auf Saite\u00a05, Takt\u00a03 und\u00a04',
  )
  expect(holdNumbers('Hund 5 am 3. Bundestag', pageWords('de'))).toBe('Hund 5 am 3. Bundestag')
})

test('a line of counts ends before a number only', () => {
  expect(holdCounts('1 e & a 2 e & a')).toBe('1\u00a0e\u00a0&\u00a0a 2\u00a0e\u00a0&\u00a0a')
  expect(holdCounts('1 2 3')).toBe('1 2 3')
})
