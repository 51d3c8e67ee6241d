import { expect, it } from 'vitest'
import { element, xmlDocument } from '../../src/exchange/xml-door.ts'

const DOCTYPE = { public: 'P', system: 'S' }

it('writes one element a line and closes empty ones short', () => {
  const root = element('a', { n: 1, none: null }, element('b', {}, 'x', 2), null, element('c', {}))
  expect(xmlDocument(root, DOCTYPE, 1)).toBe(
    '<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE a PUBLIC "P" "S">\n<a n="1">\n  <b>x2</b>\n  <c/>\n</a>\n',
  )
})

it('leaves what stands deeper in the line of the element that holds it', () => {
  const root = element('a', {}, element('b', {}, element('c', {}, element('d', {}, 1), element('e', {}))))
  expect(xmlDocument(root, DOCTYPE, 2)).toContain('\n<a>\n  <b>\n    <c><d>1</d><e/></c>\n  </b>\n</a>\n')
})

it('escapes what would end a text or an attribute', () => {
  const xml = xmlDocument(element('a', { t: 'R&B "x" <y>' }, 'a < b & c ]]>'), DOCTYPE, 0)
  expect(xml).toContain('t="R&#x26;B &#x22;x&#x22; <y>"'.replace('<y>', '&#x3C;y>'))
  expect(xml).toContain('>a &#x3C; b &#x26; c ]]')
})

// Source: XML 1.0, section 2.2: Char excludes these.
it('leaves out the signs that XML forbids and keeps all others', () => {
  const xml = xmlDocument(element('a', {}, 'x\u0000\u001b\ud800\uffffy\t\u{1d11e}'), DOCTYPE, 0)
  expect(xml).toContain('<a>xy\t\u{1d11e}</a>')
})
