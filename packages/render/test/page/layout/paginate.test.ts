import fc from 'fast-check'
import { expect, test } from 'vitest'
import { paginate } from '../../../src/page/layout/paginate.ts'
import { type Row, row } from '../../../src/page/layout/row.ts'

/** A row that can be found again on its page by its name. */
function named(name: string, height: number, given: Partial<Row> = {}): Row {
  return row(height, [{ kind: 'anchor', y: 0, name }], given)
}

function names(rows: readonly Row[], height = 100): string[][] {
  return paginate(rows, { height, firstNumber: 1 }).map((page) =>
    page.items.flatMap((item) => (item.kind === 'anchor' ? [item.name] : [])),
  )
}

test('a heading is never the last thing on a page', () => {
  const heading = named('heading', 15, { keepNext: true, before: 10 })
  expect(names([named('a', 80), heading, named('b', 20)])).toEqual([['a'], ['heading', 'b']])
})

test('a card is never split: what does not fit goes over whole', () => {
  expect(names([named('a', 60), named('card', 50), named('b', 10)])).toEqual([['a'], ['card', 'b']])
})

const card = named('card', 60, {
  pieces: [named('card 1', 40, { keepNext: true }), named('card 2', 5), named('card 3', 15)],
})

test('a card that may be cut is whole where it fits, and goes over whole from a page well filled', () => {
  expect(names([named('a', 30), card])).toEqual([['a', 'card']])
  expect(names([named('a', 50), card])).toEqual([['a'], ['card']])
})

test('a card that may be cut is cut where most of a page would stay empty, and where it is higher than a page', () => {
  const head = named('head', 31, { keepNext: true })
  expect(names([head, card], 90)).toEqual([['head', 'card 1', 'card 2'], ['card 3']])
  expect(names([named('a', 30), card], 50)).toEqual([['a'], ['card 1', 'card 2'], ['card 3']])
})

test('what must stay together but is higher than a page is cut where the page is full', () => {
  const held = ['1', '2', '3'].map((name) => named(name, 40, { keepNext: true }))
  expect(names([...held, named('4', 40)])).toEqual([
    ['1', '2'],
    ['3', '4'],
  ])
})

test('room above a row is not left at the top of a page', () => {
  const pages = paginate([named('a', 90), named('b', 90, { before: 30 })], { height: 100, firstNumber: 1 })
  expect(pages[1]?.items[0]?.y).toBe(0)
})

test('the larger of two rooms that meet counts', () => {
  const pages = paginate([named('a', 10, { after: 8 }), named('b', 10, { before: 5 })], { height: 100, firstNumber: 1 })
  expect(pages[0]?.items[1]?.y).toBe(18)
})

test('a rule between groups does not open a page', () => {
  const rule = named('rule', 1, { atTop: 'drop', keepNext: true })
  expect(names([named('a', 90), rule, named('b', 50)])).toEqual([['a'], ['b']])
  // Nor does it end one where what follows fills a page by itself.
  expect(names([named('a', 40), { ...rule, before: 5, after: 5 }, named('b', 99)])).toEqual([['a'], ['b']])
})

test('a table header comes again on the next page', () => {
  const again = [named('again', 10)]
  const rows = [named('header', 10, { keepNext: true }), ...['1', '2', '3'].map((name) => named(name, 40, { again }))]
  expect(names(rows)).toEqual([
    ['header', '1', '2'],
    ['again', '3'],
  ])
})

test('what opens on the right leaves a left-hand page empty', () => {
  const pages = paginate([named('a', 10), named('b', 10, { startsPage: 'right' })], { height: 100, firstNumber: 1 })
  expect(pages.map((page) => page.blank)).toEqual([false, true, false])
})

test('no rows are lost and no page is overfull, whatever their heights', () => {
  const heights = fc.array(fc.record({ height: fc.integer({ min: 1, max: 60 }), keepNext: fc.boolean() }), {
    minLength: 1,
  })
  fc.assert(
    fc.property(heights, (list) => {
      const rows = list.map(({ height, keepNext }, index) =>
        named(String(index), height, { keepNext: keepNext && index % 2 === 0 }),
      )
      const pages = paginate(rows, { height: 130, firstNumber: 1 })
      const found = pages.flatMap((page) => page.items.flatMap((item) => (item.kind === 'anchor' ? [item.name] : [])))
      expect(found).toEqual(rows.map((_, index) => String(index)))
      for (const page of pages) expect(page.filled).toBeLessThanOrEqual(130.5)
    }),
  )
})

test('a page can be filled less high than the others', () => {
  const rows = ['a', 'b', 'c', 'd'].map((name) => named(name, 30))
  const pages = paginate(rows, { height: 100, firstNumber: 1, lowered: { page: 0, height: 70 } })
  expect(pages.map(({ filled }) => filled)).toEqual([60, 60])
})
