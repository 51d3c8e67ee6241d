import { toHtml } from 'hast-util-to-html'
import { expect, test } from 'vitest'
import { chordName, signsApart } from '../../../src/surfaces/html/words.ts'

test('sets accidentals in italics in a piece of their own, and leaves all other words as they are', () => {
  const [before, sign, after] = signsApart('As bar 1, with D/F♯ for G.')
  expect([before, after]).toEqual(['As bar 1, with D/F', ' for G.'])
  expect(sign).toMatchObject({ tagName: 'span', properties: { className: ['sign'] }, children: [{ value: '♯' }] })
  expect(signsApart('As bar 1, then:')).toEqual(['As bar 1, then:'])
})

test('raises the extensions of a chord symbol, and leaves the name of a shape that is none as it is', () => {
  const inside = (name: string): string => toHtml(chordName(name)).replace(/^<span class="chord">|<\/span>$/g, '')
  expect(inside('Bbmaj7')).toBe('B♭<sup>maj7</sup>')
  expect(inside('D/F#')).toBe('D/F♯')
  expect(inside('Em7.open')).toBe('Em<sup>7</sup><span class="variant"> open</span>')
  // Their first letters are those of notes.
  expect(inside('Groove')).toBe('Groove')
  expect(inside('Drone.low')).toBe('Drone<span class="variant"> low</span>')
})
