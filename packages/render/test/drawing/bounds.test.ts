import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { boundsOf } from '../../src/drawing/bounds.ts'
import { scale, translate } from '../../src/drawing/place.ts'
import { circle, frame, glyphs, line, polygon, rect, roundRect, swell } from '../../src/drawing/shapes.ts'
import { openFonts } from '../../src/fonts/font-set.ts'

const fonts = openFonts(fontBytes())
const edges = (item: Parameters<typeof boundsOf>[0][number]) => {
  const bounds = boundsOf([item], fonts)
  return bounds && [bounds.left, bounds.top, bounds.right, bounds.bottom].map((edge) => Math.round(edge * 1000) / 1000)
}

describe('the box of a shape', () => {
  test('holds the width of a line', () => {
    expect(edges(line('rule', { x1: 0, y1: 0, x2: 10, y2: 0 }, 2))).toEqual([-1, -1, 11, 1])
  })

  test('is the radius about a circle', () => {
    expect(edges(circle('grid-dot', { x: 5, y: 5, radius: 2 }, 0))).toEqual([3, 3, 7, 7])
  })

  test('is the outer edge of a frame', () => {
    expect(edges(frame('strip-frame', { x: 1, y: 2, width: 3, height: 4 }, 0.5))).toEqual([1, 2, 4, 6])
  })

  test('is that of the rectangle when corners are round', () => {
    expect(edges(roundRect('grid-barre', { x: 1, y: 2, width: 9, height: 4 }, 2))).toEqual([1, 2, 10, 6])
  })

  test('follows a curve to its top, not to its handles', () => {
    expect(edges(swell('tie', { x1: 0, y1: 0, x2: 10, y2: 0 }, { height: -3, thickness: 1 }))).toEqual([0, -3, 10, 0])
  })

  test('is the ink of characters where they stand', () => {
    const [left, top, right, bottom] = edges(glyphs('text', 'sans', 100, 'H', { x: 50, y: 200 }))!
    expect(top).toBeCloseTo(200 - 66, 0)
    expect(bottom).toBeCloseTo(200, 0)
    expect(left).toBeGreaterThan(50)
    expect(right).toBeLessThan(50 + fonts.measure('sans', 100, 'H').width)
  })

  test('does not exist without ink', () => {
    expect(boundsOf([glyphs('text', 'sans', 10, ' ', { x: 0, y: 0 })], fonts)).toBeNull()
  })
})

test('moving moves characters, paths and groups alike', () => {
  const group = {
    kind: 'group',
    name: 'slot',
    bar: 1,
    at: 0,
    items: [rect('beam', { x: 0, y: 0, width: 4, height: 2 }), polygon('beam', [0, 0, 1, 0, 1, 1])],
  } as const
  expect(boundsOf(translate([group], 10, 20), fonts)).toEqual({ left: 10, top: 20, right: 14, bottom: 22 })
})

test('enlarging widens lines and letters', () => {
  const [drawn, text] = scale(
    [line('rule', { x1: 0, y1: 0, x2: 10, y2: 0 }, 2), glyphs('text', 'sans', 8, 'A', { x: 1, y: 2 })],
    2,
  )
  expect(drawn).toMatchObject({ lineWidth: 4 })
  expect(text).toMatchObject({ size: 16, x: 2, y: 4 })
})
