import { expect, test } from 'vitest'
import { signsApart } from '../../../src/surfaces/html/words.ts'

test('sets accidentals in italics in a piece of their own, and leaves all other words as they are', () => {
  const [before, sign, after] = signsApart('As bar 1, with D/F♯ for G.')
  expect([before, after]).toEqual(['As bar 1, with D/F', ' for G.'])
  expect(sign).toMatchObject({ tagName: 'span', properties: { className: ['sign'] }, children: [{ value: '♯' }] })
  expect(signsApart('As bar 1, then:')).toEqual(['As bar 1, then:'])
})
