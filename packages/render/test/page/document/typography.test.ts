import { expect, test } from 'vitest'
import { holdNumbers, setPlain } from '../../../src/page/document/typography.ts'
import { pageWords } from '../../../src/page/document/words-of-language.ts'

const WORDS = pageWords('en')

test('a number stays with the word it counts', () => {
  expect(holdNumbers('finger 2 onto fret 7 on string 5', WORDS)).toBe('finger\u00a02 onto fret\u00a07 on string\u00a05')
})

test('straight quotation marks become true ones', () => {
  expect(setPlain('nobody else\'s "leave"', WORDS)).toBe('nobody else’s “leave”')
})
