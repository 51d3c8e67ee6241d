import { readLesson } from '@barwise/parser'
import { expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { planBooklet, type RenderHtmlInput, renderHtml } from '../../src/surfaces/html.ts'

const TEXT = `---
title: Gangway
---

:::part{#walk title="Walk" grid=8}
bar 1
  1: 0@6 -
  2: 0@6 3@6
  3: x x
  4: 0@5 -
:::
`

const input: RenderHtmlInput = {
  book: null,
  lessons: [{ lesson: readLesson({ path: 'gangway.md', text: TEXT }).lesson, images: new Map() }],
  fonts: openFonts(fontBytes()),
  webFonts: [],
}

test('names every file of the booklet before any is made, in a fixed order', () => {
  expect([...planBooklet(input).keys()]).toEqual(['assets/style.css', 'index.html'])
})

test('makes a file anew each time it is asked for, always the same', () => {
  const make = planBooklet(input).get('index.html')
  const page = make?.()
  expect(page).toContain('<h1>Gangway</h1>')
  expect(make?.()).toBe(page)
  expect(renderHtml(input).get('index.html')).toBe(page)
})

test('the style sheet is that of the edition', () => {
  const edition = { teacher: false, large: true, mono: false, left: false }
  const style = (given: RenderHtmlInput): unknown => planBooklet(given).get('assets/style.css')?.()
  expect(style({ ...input, edition })).not.toBe(style(input))
})
