import { readLesson } from '@barwise/parser'
import { collisionsIn, describeCollision, type LaidPage, openFonts, renderPdf } from '@barwise/render'
import { expect, test } from 'vitest'
import { drawnOn } from '../../../../../tests/support/drawn-page.ts'
import { fontBytes } from '../../../../../tests/support/fonts.ts'

const fonts = openFonts(fontBytes())
const SIX = '12@1(3) 10@1(1) 12@2(3) 10@2(1) 12@3(3) 11@3(2)'
const bar = (number: number, beat: string): string =>
  `bar ${number}\n${[1, 2, 3, 4].map((at) => `  ${at}${beat}`).join('\n')}\n`

async function pagesOf(bars: string): Promise<readonly LaidPage[]> {
  const text = `---\ntitle: Gutter\ntempo: 60\n---\n\n:::part{#p title="Run" grid=4 show=cards}\n${bars}:::\n`
  const { lesson } = readLesson({ path: 'gutter.md', text })
  return (await renderPdf({ lessons: [{ lesson }], fonts, creationDate: new Date(0) })).pages
}

/** The widest figure on the pages, in points. */
function widest(pages: readonly LaidPage[]): number {
  const items = pages.flatMap((page) => page.items)
  const cards = items.filter((item) => item.kind === 'figure' && item.node?.alt?.startsWith('Bar '))
  return Math.max(...cards.map((item) => (item.kind === 'figure' ? item.drawing.width : 0)))
}

test('a bar of 24 notes takes the width of the page, so that nothing in it touches', async () => {
  const pages = await pagesOf(bar(1, ` in 6: ${SIX}`))
  for (const page of pages) expect(collisionsIn(drawnOn(page), fonts).map(describeCollision)).toEqual([])
  // The column of music beside steps is 94.75 mm wide.
  expect(widest(pages)).toBeGreaterThan(300)
})

test('a bar of four notes keeps to its column', async () => {
  expect(widest(await pagesOf(bar(1, ': 12@1(3)')))).toBeLessThan(200)
})
