import { fileURLToPath } from 'node:url'
import { loadWork } from '@barwise/cli'
import { collisionsIn, describeCollision, openFonts, renderPdf } from '@barwise/render'
import { expect, test } from 'vitest'
import { boundsOf } from '../packages/render/src/drawing/bounds.ts'
import { plainPickup } from '../packages/render/src/page/document/plain-pickup.ts'
import { stepsOfPart } from '../packages/render/src/steps/part-steps.ts'
import { drawnOn } from './support/drawn-page.ts'
import { fontBytes } from './support/fonts.ts'

const fonts = openFonts(fontBytes())
const EXAMPLES: string = fileURLToPath(new URL('../examples', import.meta.url))
const { book, lessons } = loadWork('book.md', EXAMPLES, () => {})
const { pages } = await renderPdf({
  book,
  lessons: lessons.map(({ lesson }) => ({ lesson })),
  fonts,
  creationDate: new Date(0),
})

test('nothing touches what is written on any page of the example book', () => {
  for (const page of pages) {
    expect(collisionsIn(drawnOn(page), fonts).map(describeCollision), `page ${page.label}`).toEqual([])
  }
})

test('no lesson ends on a page that is nearly bare', () => {
  const opens = lessons.map(({ lesson }) => {
    const id = lesson.file.replace(/^.*\/|\.md$/g, '')
    return pages.findIndex(({ items }) => items.some((item) => item.kind === 'anchor' && item.name === id))
  })
  for (const opening of opens.slice(1)) {
    const last = pages[opening - 1]
    if (last === undefined) throw new Error('a lesson opens the book')
    expect(boundsOf(drawnOn(last), fonts)?.bottom ?? 0, `page ${last.label}`).toBeGreaterThan(0.35 * last.height)
  }
})

test('every card prints the rhythm to say, save where nothing begins', () => {
  const lines = pages.flatMap(({ items }) =>
    items.flatMap((item) => (item.kind === 'line' ? [item.fragments.map(({ text }) => text).join('')] : [])),
  )
  const printed = lines.map((line) => line.replaceAll('\u00a0', ' ').trim())
  const all = printed.join(' ')
  const rhythms = lessons.flatMap(({ lesson }) =>
    lesson.parts.flatMap((part) => {
      const { cards } = stepsOfPart(lesson, part)
      return cards.filter((card) => card !== plainPickup(part, cards)).map(({ rhythm }) => rhythm)
    }),
  )
  expect(rhythms.length).toBeGreaterThan(50)
  expect(rhythms.filter((rhythm) => !all.includes(rhythm))).toEqual([])
  expect(rhythms).toContain('Say: . .')
  expect(printed).not.toContain('Say: . .')
})

test('a bar a little wider than its column stands beside its steps like the others', () => {
  const kettle = lessons.findIndex(({ lesson }) => lesson.settings.title === 'Kettle on the Hob')
  const title = lessons[kettle]?.lesson.settings.title
  const items = pages.flatMap((page) => page.items)
  const opens = items.findIndex((item) => item.kind === 'outline' && item.title === title)
  const figure = items.slice(opens).find((item) => item.kind === 'figure' && item.node?.alt?.startsWith('Bar 8'))
  const page = pages.find((each) => figure !== undefined && each.items.includes(figure))
  if (page === undefined || figure?.kind !== 'figure') throw new Error('bar 8 has no card')
  const steps = page.items.filter((item) => {
    return item.kind === 'line' && item.node?.role === 'LBody' && Math.abs(item.y - figure.y - 60) < 60
  })
  expect(steps.length).toBeGreaterThan(5)
  for (const step of steps) {
    if (step.kind === 'line') expect(step.x).toBeGreaterThan(figure.x + figure.drawing.width)
  }
})
