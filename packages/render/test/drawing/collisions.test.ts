import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'
import { collisionsIn, describeCollision } from '../../src/drawing/collisions.ts'
import { circle, glyphs, line, polygon, rect } from '../../src/drawing/shapes.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { drawGridRow } from '../../src/grids/draw-grid.ts'
import { drawCardFigure } from '../../src/strip/card-figure.ts'
import { ferryQueue } from '../engrave/ferry-queue.ts'
import { zoo } from '../engrave/zoo.ts'
import { shape } from '../grids/shapes.ts'

const fonts = openFonts(fontBytes())

describe('the check itself', () => {
  test('finds a sign drawn over a head', () => {
    const head = circle('head', { x: 10, y: 10, radius: 3 }, 0)
    const found = collisionsIn([head, line('accidental', { x1: 8, y1: 4, x2: 8, y2: 20 }, 0.5)], fonts)
    expect(found.map(({ roles }) => [...roles].sort())).toEqual([['accidental', 'head']])
  })

  test('finds a small sign inside a large one', () => {
    const found = collisionsIn(
      [rect('beam', { x: 0, y: 0, width: 50, height: 20 }), rect('rest', { x: 20, y: 8, width: 2, height: 2 })],
      fonts,
    )
    expect(found).toHaveLength(1)
  })

  test('measures outlines, not boxes', () => {
    const slanted = polygon('beam', [0, 0, 40, 30, 40, 34, 0, 4])
    expect(collisionsIn([slanted, circle('rest', { x: 34, y: 6, radius: 3 }, 0)], fonts)).toEqual([])
  })

  test('counts the width of a line', () => {
    const head = rect('head', { x: 0, y: 0, width: 4, height: 4 })
    const at = (width: number) =>
      collisionsIn([head, line('bar-line', { x1: 6, y1: 0, x2: 6, y2: 20 }, width)], fonts).length
    expect(at(1)).toBe(0)
    expect(at(4.2)).toBe(1)
  })

  test('asks for air when told to', () => {
    const apart = [glyphs('count', 'sans', 10, 'e', { x: 0, y: 0 }), glyphs('count', 'sans', 10, 'e', { x: 6, y: 0 })]
    expect(collisionsIn(apart, fonts)).toEqual([])
    expect(collisionsIn(apart, fonts, { clearancePt: 3 })).toHaveLength(1)
  })

  test('says where in words', () => {
    const group = {
      kind: 'group',
      name: 'slot',
      bar: 2,
      at: 840,
      items: [circle('head', { x: 10, y: 10, radius: 3 }, 0), line('accidental', { x1: 8, y1: 4, x2: 8, y2: 20 }, 0.5)],
    } as const
    expect(collisionsIn([group], fonts).map(describeCollision)).toEqual([
      expect.stringMatching(/^head touches accidental in bar 2 at 840 \(x [\d.]+, y [\d.]+\)$/),
    ])
  })
})

describe('no sign touches another', () => {
  test('in the figures of a lesson, on paper and in large print', () => {
    const { lesson, part } = ferryQueue()
    for (const minTextPt of [0, 14]) {
      for (const { number, length } of part.bars) {
        const figure = drawCardFigure({ lesson, part, fonts, bar: number, fromTicks: 0, toTicks: length, minTextPt })
        expect(collisionsIn(figure.drawing.items, fonts).map(describeCollision), `bar ${number}`).toEqual([])
      }
    }
  })

  test('in the figures of every kind of bar', () => {
    for (const { name, lesson, part } of zoo()) {
      for (const { number, length } of part.bars) {
        const { drawing } = drawCardFigure({ lesson, part, fonts, bar: number, fromTicks: 0, toTicks: length })
        expect(collisionsIn(drawing.items, fonts).map(describeCollision), `${name} ${number}`).toEqual([])
      }
    }
  })

  test('in chord grids', () => {
    const shapes = [
      shape('Em7', 'x 7 9 7 8 7', 'x 1 3 1 2 1'),
      shape('Bbmaj7(#11)', 'x 1 2 2 3 0', 'x 1 2 3 4 0'),
      shape('F#m7b5/E', '0 0 2 2 1 2', '0 0 2 3 1 4'),
      shape('A9', 'x 12 11 12 12 12', 'x 2 1 3 3 3'),
      shape('Em7.open', 'x 7 7 7 7 x', 'x 1 1 1 1 x', { implied: true }),
    ]
    for (const { drawing } of drawGridRow(shapes, { instrument: GUITAR, fonts })) {
      expect(collisionsIn(drawing.items, fonts).map(describeCollision)).toEqual([])
    }
  })
})
