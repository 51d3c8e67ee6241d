import fc from 'fast-check'
import { expect, test } from 'vitest'
import { paginate } from '../../../src/page/layout/paginate.ts'
import { type Row, row } from '../../../src/page/layout/row.ts'
import { setColumns } from '../../../src/page/layout/set-columns.ts'

/** A cell that can be found again by its name and its place: a figure of no size. */
function cell(name: string, height: number, before = 4): Row {
  const drawing = { kind: 'drawing', width: 0, height: 0, items: [] } as const
  const node = { role: 'Figure', parent: null, alt: name } as const
  return row(height, [{ kind: 'figure', x: 0, y: 0, drawing, node }], { before })
}

/** The cells of each page as `name@x,y`. */
function places(rows: readonly Row[], height: number): string[][] {
  return paginate(rows, { height, firstNumber: 1 }).map((page) =>
    page.items.flatMap((item) => (item.kind === 'figure' ? [`${item.node?.alt}@${item.x},${item.y}`] : [])),
  )
}

test('cells go down the left column and then down the right, as even as their order allows', () => {
  const columns = setColumns([cell('a', 30), cell('b', 20), cell('c', 26), cell('d', 30)], 200)
  expect(columns.height).toBe(60)
  expect(places([columns], 100)).toEqual([['a@0,0', 'b@0,34', 'c@200,0', 'd@200,30']])
})

test('of two ways alike the left column is the longer one; one cell stands at the left', () => {
  expect(places([setColumns([cell('a', 10), cell('b', 10), cell('c', 10)], 200)], 100)).toEqual([
    ['a@0,0', 'b@0,14', 'c@200,0'],
  ])
  expect(places([setColumns([cell('a', 10)], 200)], 100)).toEqual([['a@0,0']])
})

test('columns are cut at the foot of a page: both are filled as far as they go, and the rest is evened on the next', () => {
  const cells = ['a', 'b', 'c', 'd', 'e', 'f'].map((name) => cell(name, 30))
  const head = cell('head', 20)
  expect(places([{ ...head, keepNext: true }, setColumns(cells, 200)], 90)).toEqual([
    ['head@0,0', 'a@0,24', 'b@0,58', 'c@200,24', 'd@200,58'],
    ['e@0,0', 'f@200,0'],
  ])
})

test('a heading goes over with its columns where no cell fits under it', () => {
  const cells = ['a', 'b'].map((name) => cell(name, 50))
  const head = { ...cell('head', 20), keepNext: true }
  expect(places([cell('text', 40), head, setColumns(cells, 200)], 100)).toEqual([
    ['text@0,0'],
    ['head@0,0', 'a@0,24', 'b@200,24'],
  ])
})

test('whatever the heights, every cell is printed once and in order, and none that fits a page runs over its foot', () => {
  const heights = fc.array(fc.integer({ min: 5, max: 90 }), { minLength: 1, maxLength: 14 })
  fc.assert(
    fc.property(heights, fc.integer({ min: 0, max: 80 }), (each, lead) => {
      const rows = [
        cell('lead', lead),
        setColumns(
          each.map((height, index) => cell(String(index), height)),
          200,
        ),
      ]
      const pages = paginate(rows, { height: 100, firstNumber: 1 })
      const printed = pages.flatMap((page) =>
        page.items.flatMap((item) => (item.kind === 'figure' ? [{ name: item.node?.alt, y: item.y }] : [])),
      )
      expect(printed.slice(1).map(({ name }) => name)).toEqual(each.map((_, index) => String(index)))
      for (const { name, y } of printed.slice(1)) expect(y + (each[Number(name)] ?? 0)).toBeLessThanOrEqual(100.5)
    }),
  )
})
