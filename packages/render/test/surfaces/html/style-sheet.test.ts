import { describe, expect, test } from 'vitest'
import { PUPIL } from '../../../src/page/edition.ts'
import { styleSheet } from '../../../src/surfaces/html/style-sheet.ts'
import { type Colours, DARK, LARGE, LIGHT } from '../../../src/surfaces/html/styles/colours.ts'
import { contrast } from './contrast.ts'

const usual = styleSheet([])
const large = styleSheet([], { ...PUPIL, large: true })
const mono = styleSheet([], { ...PUPIL, mono: true })

describe('colours', () => {
  test('black on white is 21:1, as the standard says', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21)
  })

  // WCAG 2.2, success criterion 1.4.3 asks for 4.5:1, 1.4.6 for 7:1.
  test.each<readonly [string, Colours, number]>([
    ['light', LIGHT, 6.8],
    ['dark', DARK, 6.8],
    ['large and light', LARGE[0], 7],
    ['large and dark', LARGE[1], 7],
  ])('every word has contrast with the page: %s', (_, colours, least) => {
    for (const colour of [colours.ink, colours.quiet, colours.accent])
      expect(contrast(colour, colours.paper), colour).toBeGreaterThan(least)
  })

  test('the pure black edition has no colour and no grey, by day and by night', () => {
    const colours = [...mono.matchAll(/--(?:ink|quiet|accent|paper):(#[0-9a-f]{6})/g)].map((match) => match[1])
    expect(colours).toHaveLength(8)
    expect([...new Set(colours.slice(0, 4))].sort()).toEqual(['#000000', '#ffffff'])
    expect(new Set(colours.slice(4))).toEqual(new Set(['#ffffff', DARK.paper]))
  })
})

describe('sizes', () => {
  test('follow the size of text that the reader has set: no words in pixels', () => {
    for (const sheet of [usual, large, mono]) {
      expect(sheet).not.toMatch(/font:[^;}]*\d+px/)
      expect(sheet).not.toMatch(/font-size:[^;}]*px/)
    }
  })

  test('of large print are half as large again', () => {
    expect(large).toContain('html{font-size:150%}')
    expect(usual).not.toContain('html{font-size:150%}')
  })

  test('of large print set its words in the one family made for it', () => {
    expect(large).toMatch(/--serif:'Atkinson Hyperlegible Next'/)
    expect(large).toMatch(/\.f-sans-bold\{font-family:'Atkinson Hyperlegible Next',sans-serif;font-weight:700/)
    expect(usual).not.toContain('Atkinson')
  })
})

test('nothing moves, so that there is nothing to reduce', () => {
  expect(usual).not.toMatch(/animation|transition|scroll-behavior/)
})

test('paper shows no ways to click, and cuts no card', () => {
  const print = usual.slice(usual.indexOf('@media print'))
  expect(print).toMatch(/\.rail,\.skip,\.pager\{display:none\}/)
  expect(print).toMatch(/[},\n][^{}]*\.card[^{}]*\{break-inside:avoid\}/)
})
