import { expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { glyphs, line, rect } from '../../src/drawing/shapes.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { drawingToSvg, sharedGlyphs, svgFaceStyles } from '../../src/surfaces/svg.ts'

const fonts = openFonts(fontBytes())

const drawing: Drawing = {
  kind: 'drawing',
  width: 40.004,
  height: 20,
  items: [
    line('staff-line', { x1: 0, y1: 1 / 3, x2: 40, y2: 1 / 3 }, 0.5),
    {
      kind: 'group',
      name: 'bar',
      bar: 2,
      at: null,
      items: [
        {
          kind: 'group',
          name: 'slot',
          bar: 2,
          at: 840,
          items: [
            glyphs('head', 'music', 20, '\u{E0A4}', { x: 5, y: 6 }),
            rect('strip-block', { x: 0, y: 0, width: 5, height: 6 }),
            glyphs('strip-word', 'sans-bold', 8, 'H & <P>', { x: 1, y: 5 }, { ink: 'paper' }),
          ],
        },
      ],
    },
  ],
}

test('black is left to the page, and only to it', () => {
  const svg = drawingToSvg(drawing, { fonts, label: 'Bar 2' })
  expect(svg).toContain('fill="currentColor" role="img" aria-label="Bar 2"')
  expect(svg).toContain('<path d="M0 0L5 0L5 6L0 6Z"/>')
  expect(svg).not.toMatch(/#000|black/)
})

test('numbers have at most two decimals outside the scale of a glyph', () => {
  const svg = drawingToSvg(drawing, { fonts, label: 'Bar 2' }).replace(/scale\([^)]*\)/g, '')
  expect(svg).not.toMatch(/\d\.\d{3}/)
  expect(svg).toContain('M0 0.33L40 0.33')
})

test('groups carry their bar and ticks', () => {
  expect(drawingToSvg(drawing, { fonts, label: 'x' })).toContain(
    '<g class="bar" data-bar="2"><g class="slot" data-bar="2" data-at="840">',
  )
})

test('signs are uses of outlines, words are text', () => {
  const svg = drawingToSvg(drawing, { fonts, label: 'x' })
  expect(svg).toContain('<path id="g-music-e0a4"')
  expect(svg).toContain('<use href="#g-music-e0a4" transform="translate(5 6) scale(0.02)"/>')
  expect(svg).toContain('class="f-sans-bold paper" x="1" y="5" font-size="8" fill="#fff">H &amp; &lt;P&gt;</text>')
})

test('a file that stands alone holds no text and has a title', () => {
  const svg = drawingToSvg(drawing, { fonts, label: 'Bar "2"', outlined: true })
  expect(svg).not.toContain('<text')
  expect(svg).toContain('<title>Bar &quot;2&quot;</title>')
  for (const [, id] of svg.matchAll(/href="#([^"]+)"/g)) expect(svg).toContain(`id="${id}"`)
})

test('drawings of a page share one set of outlines', () => {
  const svg = drawingToSvg(drawing, { fonts, label: 'x', glyphs: 'shared' })
  expect(svg).not.toContain('<defs>')
  expect(sharedGlyphs([drawing, drawing], fonts).match(/id="g-music-e0a4"/g)).toHaveLength(1)
})

test('a drawing that stands beside its own words is hidden from screen readers', () => {
  expect(drawingToSvg(drawing, { fonts, label: '' })).toContain('aria-hidden="true"')
})

test('every face of words has a style rule', () => {
  expect(svgFaceStyles()).toContain(
    ".f-serif-italic{font-family:'Source Serif 4',serif;font-weight:400;font-style:italic}",
  )
})

test('lines of one pen that follow each other are one path; another pen and a fill stay apart', () => {
  const across = (y: number, width: number) => line('staff-line', { x1: 0, y1: y, x2: 9, y2: y }, width)
  const block = rect('strip-block', { x: 0, y: 0, width: 1, height: 1 })
  const items = [across(1, 0.5), across(2, 0.5), across(3, 0.7), block, block, across(4, 0.7)]
  const svg = drawingToSvg({ ...drawing, items }, { fonts, label: '' })
  expect([...svg.matchAll(/<path d="([^"]*)"/g)].map((match) => match[1])).toEqual([
    'M0 1L9 1M0 2L9 2',
    'M0 3L9 3',
    'M0 0L1 0L1 1L0 1Z',
    'M0 0L1 0L1 1L0 1Z',
    'M0 4L9 4',
  ])
})
