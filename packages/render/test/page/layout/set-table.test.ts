import { openFonts, PUPIL } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import type { DocumentBlock } from '../../../src/page/document/document-block.ts'
import { pageWords } from '../../../src/page/document/words-of-language.ts'
import { hyphenationFor } from '../../../src/page/layout/hyphenation.ts'
import type { LayoutContext } from '../../../src/page/layout/layout-context.ts'
import { linkPlaces } from '../../../src/page/layout/link-places.ts'
import { pageStyle } from '../../../src/page/layout/page-style.ts'
import { setTable } from '../../../src/page/layout/set-table.ts'
import { lesson, text } from '../build-lesson.ts'

const fonts = openFonts(fontBytes())
const HEADS = ['String', 'Fret', 'Finger', 'Sound', 'Beat', 'Stroke', 'Sounding', 'Remark']
const CELLS = ['sixth', '12', '3', 'dominantseventh', 'two and', 'upwards', 'dampened', 'somewhat longer words']

type Table = Extract<DocumentBlock, { kind: 'table' }>

/** The words of a table's cells as they are set, line by line: where each line begins and ends, and its size. */
async function linesOf(columns: number, large: boolean) {
  const style = pageStyle('a4', { ...PUPIL, large })
  const context: LayoutContext = {
    fonts,
    style,
    words: pageWords('en'),
    lesson: lesson(),
    lessonId: 'x',
    links: linkPlaces({ id: 'x', file: 'x.md', parts: [] }, []),
    editionName: null,
    hyphenate: await hyphenationFor('en'),
    images: new Map(),
    report: () => {},
  }
  const block: Table = {
    kind: 'table',
    align: HEADS.slice(0, columns).map(() => null),
    header: HEADS.slice(0, columns).map((head) => [text(head)]),
    rows: [CELLS.slice(0, columns).map((cell) => [text(cell)])],
  }
  const rows = setTable(block, { width: style.textWidth, parent: { role: 'Sect', parent: null } }, context)
  const lines = rows.flatMap(({ items }) =>
    items.flatMap((item) => {
      if (item.kind !== 'line') return []
      const last = item.fragments.at(-1)
      const said = item.fragments.map((fragment) => fragment.text).join('')
      return [
        { x: item.x, y: item.y, right: item.x + (last?.dx ?? 0) + (last?.width ?? 0), said, size: last?.size ?? 0 },
      ]
    }),
  )
  return { lines, style }
}

describe('a table', () => {
  test('is set in the size of steps where its words have room', async () => {
    for (const large of [false, true]) {
      const { lines, style } = await linesOf(4, large)
      expect(new Set(lines.map(({ size }) => size))).toEqual(new Set([style.steps.size]))
      expect(lines.map(({ said }) => said)).toEqual(expect.arrayContaining(['String', 'dominantseventh']))
    }
  })

  test('of many columns in large print is set smaller, but no smaller than labels, and no word runs into the next column', async () => {
    const { lines, style } = await linesOf(8, true)
    expect(new Set(lines.map(({ size }) => size))).toEqual(new Set([style.label.size]))
    const starts = [...new Set(lines.map(({ x }) => x))].sort((a, b) => a - b)
    expect(starts).toHaveLength(8)
    for (const { x, right, said } of lines) {
      const next = starts[starts.indexOf(x) + 1] ?? style.textWidth + 8.01
      expect(right, said).toBeLessThan(next - 8)
    }
    expect(lines.map(({ said }) => said)).toEqual(expect.arrayContaining(['String', 'Stroke', 'upwards', 'dampened']))
  })
})
