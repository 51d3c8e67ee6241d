import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'
import { boundsOf } from '../../src/drawing/bounds.ts'
import type { DrawnItem, GlyphRun, Path, Role } from '../../src/drawing/drawing.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { drawGrid, drawGridRow } from '../../src/grids/draw-grid.ts'
import { shape } from './shapes.ts'

const fonts = openFonts(fontBytes())
const em7 = shape('Em7', 'x 7 9 7 8 7', 'x 1 3 1 2 1')
const open = shape('Em7.open', 'x 7 7 7 7 x', 'x 1 1 1 1 x', { implied: true })
const draw = (of = em7, options = {}) => drawGrid({ shape: of, instrument: GUITAR, fonts, ...options })
const roles = (items: readonly DrawnItem[], role: Role) =>
  items.filter((item): item is Path | GlyphRun => item.kind !== 'group' && item.role === role)
const texts = (items: readonly DrawnItem[], role: Role) =>
  roles(items, role).flatMap((item) => (item.kind === 'glyphs' ? [item.text] : []))
const box = (item: DrawnItem) => boundsOf([item], fonts)!

describe('a grid', () => {
  test('shows each pressed string as a dot with its finger', () => {
    const { drawing } = draw()
    expect(roles(drawing.items, 'grid-dot')).toHaveLength(5)
    expect(texts(drawing.items, 'grid-figure').sort()).toEqual(['1', '1', '1', '2', '3'])
  })

  test('shows unfingered dots plain', () => {
    const { drawing } = draw(shape('Em7', 'x 7 9 7 8 7'))
    expect(roles(drawing.items, 'grid-dot')).toHaveLength(5)
    expect(roles(drawing.items, 'grid-figure')).toHaveLength(0)
  })

  test('spans a barre over all strings the finger presses', () => {
    const { drawing, field } = draw()
    const [barre] = roles(drawing.items, 'grid-barre').map(box)
    const gap = (field.right - field.left) / 5
    const radius = (barre!.bottom - barre!.top) / 2
    expect(barre!.left).toBeCloseTo(field.left + gap - radius, 6)
    expect(barre!.right).toBeCloseTo(field.right + radius, 6)
  })

  test('names its first fret at the side, level with it', () => {
    const { drawing, field } = draw()
    const [number] = roles(drawing.items, 'grid-label').map(box)
    expect(texts(drawing.items, 'grid-label')).toEqual(['7'])
    expect((number!.top + number!.bottom) / 2).toBeCloseTo(field.top + (field.bottom - field.top) / 8, 6)
    expect(number!.right).toBeLessThan(field.left)
  })

  test('has a thick nut and no number at the nut', () => {
    const { drawing } = draw(shape('C', 'x 3 2 0 1 0', 'x 3 2 0 1 0'))
    const [nut] = roles(drawing.items, 'grid-nut').map(box)
    expect(nut!.bottom - nut!.top).toBeCloseTo((1 * 72) / 25.4, 6)
    expect(roles(drawing.items, 'grid-label')).toHaveLength(0)
  })

  test('centres open and damped signs over their strings, clear of the nut', () => {
    const { drawing, field } = draw(shape('C', 'x 3 2 0 1 0', 'x 3 2 0 1 0'))
    const gap = (field.right - field.left) / 5
    const signs = roles(drawing.items, 'grid-sign').map(box)
    const [nut] = roles(drawing.items, 'grid-nut').map(box)
    const strings = signs.map((sign) => 6 - ((sign.left + sign.right) / 2 - field.left) / gap)
    expect(strings.map((string) => Math.round(string * 1000) / 1000)).toEqual([1, 3, 6])
    for (const sign of signs) expect(sign.bottom).toBeLessThan(nut!.top - 0.5)
  })

  test('prints the notes that sound with true accidentals', () => {
    const { drawing } = draw(shape('A9', 'x 12 11 12 12 12', 'x 2 1 3 3 3'))
    expect(texts(drawing.items, 'text').sort()).toEqual(['A', 'B', 'C', 'E', 'G', '\uED62'])
  })

  test('can print the open strings or nothing instead', () => {
    expect(texts(draw(em7, { below: 'strings' }).drawing.items, 'text')).toEqual(['E', 'B', 'G', 'D', 'A', 'E'])
    expect(texts(draw(em7, { below: 'none' }).drawing.items, 'text')).toEqual([])
  })

  test('says what it implies in italics', () => {
    const { drawing } = draw(open, { impliesWord: 'implies' })
    const run = roles(drawing.items, 'text').find((item) => item.kind === 'glyphs' && item.face === 'sans-italic')
    expect(run).toMatchObject({ text: 'implies Em7' })
  })

  test('turned for a left-handed player has string 1 at the left', () => {
    const { drawing, field } = draw(em7, { mirrored: true })
    const [sign] = roles(drawing.items, 'grid-sign').map(box)
    expect((sign!.left + sign!.right) / 2).toBeCloseTo(field.right, 6)
  })

  test('draws strings from thick to thin', () => {
    const { drawing } = draw()
    const upright = roles(drawing.items, 'grid-line').filter(
      (item): item is Path => item.kind === 'path' && item.lineWidth > 0 && item.data[1] === item.data[4],
    )
    const widths = upright.map((item) => item.lineWidth)
    expect(widths).toHaveLength(6)
    expect(widths).toEqual([...widths].sort((a, b) => b - a))
  })

  test('keeps all ink inside the drawing', () => {
    for (const of of [
      em7,
      open,
      shape('Bbmaj7(#11)', 'x 1 2 2 3 0', 'x 1 2 3 4 0'),
      shape('low', '1 x x x x x', '1 x x x x x'),
    ]) {
      const { drawing } = draw(of)
      const ink = boundsOf(drawing.items, fonts)!
      expect(ink.left, of.name).toBeGreaterThanOrEqual(-0.01)
      expect(ink.top, of.name).toBeGreaterThanOrEqual(-0.01)
      expect(ink.right, of.name).toBeLessThanOrEqual(drawing.width + 0.01)
      expect(ink.bottom, of.name).toBeLessThanOrEqual(drawing.height + 0.01)
    }
  })

  test('holds four to eight strings without touching dots', () => {
    for (const strings of [4, 5, 6, 7, 8]) {
      const frets = Array.from({ length: strings }, () => '2').join(' ')
      const seven = shape('all', frets, '', { written: [], label: null })
      const { drawing } = draw(seven)
      const dots = roles(drawing.items, 'grid-dot')
        .map(box)
        .sort((a, b) => a.left - b.left)
      for (const [index, dot] of dots.slice(1).entries()) expect(dot.left).toBeGreaterThan(dots[index]!.right)
    }
  })
})

describe('a row of grids', () => {
  test('is of one size on one line', () => {
    const long = shape('C7#9', 'x x 5 6 8 10')
    const grids = drawGridRow([em7, open, long], { instrument: GUITAR, fonts })
    expect(new Set(grids.map(({ drawing }) => drawing.height)).size).toBe(1)
    expect(new Set(grids.map(({ drawing }) => drawing.width)).size).toBe(1)
    expect(new Set(grids.map(({ field }) => field.top)).size).toBe(1)
    expect(new Set(grids.map(({ window }) => window.fretCount))).toEqual(new Set([6]))
  })
})
