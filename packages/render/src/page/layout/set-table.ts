import type { Inline } from '@barwise/parser'
import { line } from '../../drawing/shapes.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { oneLine } from './break-lines.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import type { TextSize } from './page-style.ts'
import { moveItems, type Row, row, stackRows } from './row.ts'
import { setParagraph } from './set-text.ts'
import { inlineRuns, SANS, type TextRun } from './text-run.ts'

type Table = Extract<DocumentBlock, { kind: 'table' }>

/** Room over and under the words of a cell, and between columns; more in large print. */
const PAD = 3
const GUTTER = 14

/** A table in sans: a rule under its header and one at its end, thin ones between; the header comes again on the next page. */
export function setTable(block: Table, area: Area, context: LayoutContext): readonly Row[] {
  const table: StructNode = { role: 'Table', parent: area.parent }
  const { size, widths, gutter } = columnsThatFit(block, area, context)
  const pad = PAD * context.style.ease
  const width = widths.reduce((sum, each) => sum + each, 0) + gutter * (widths.length - 1)
  const make = (cells: readonly (readonly Inline[])[], header: boolean, artifact: boolean): Row => {
    const tr: StructNode = { role: 'TR', parent: table }
    const items: PageItem[] = []
    let [x, height] = [0, 0]
    widths.forEach((columnWidth, index) => {
      const node: StructNode = { role: header ? 'TH' : 'TD', parent: tr }
      const rows = setParagraph(
        cellRuns(cells[index] ?? [], { header, size }, context),
        { role: node.role, size, node, artifact },
        { width: columnWidth + 0.5, parent: tr },
        context,
      )
      const column = stackRows(rows.map((each) => alignRow(each, block.align[index] ?? null, columnWidth)))
      items.push(...moveItems(column.items, x, pad))
      height = Math.max(height, column.height)
      x += columnWidth + gutter
    })
    const bottom = height + 2 * pad
    const thickness = header ? 0.85 : 0.4
    const rule = line('rule', { x1: 0, y1: 0, x2: width, y2: 0 }, thickness)
    items.push({
      kind: 'figure',
      x: 0,
      y: bottom,
      drawing: { kind: 'drawing', width, height: 0, items: [rule] },
      node: null,
    })
    return row(bottom, items, { keepNext: header })
  }
  const header = make(block.header, true, false)
  const again = make(block.header, true, true)
  const rows = block.rows.map((cells) => ({ ...make(cells, false, false), again: [again] }))
  const last = rows.length - 1
  return [
    { ...header, before: 8 },
    ...rows.map((each, index) => ({ ...each, after: index === last ? 9 : 0, keepNext: index === last - 1 })),
  ]
}

function cellRuns(
  cell: readonly Inline[],
  { header, size }: { readonly header: boolean; readonly size: TextSize },
  context: LayoutContext,
): readonly TextRun[] {
  return inlineRuns(cell, {
    links: context.links,
    words: context.words,
    voice: SANS,
    size: size.size,
    bold: header,
  })
}

function alignRow(each: Row, align: Table['align'][number], width: number): Row {
  if (align !== 'right' && align !== 'center') return each
  return {
    ...each,
    items: each.items.map((item) => {
      if (item.kind !== 'line') return item
      const last = item.fragments.at(-1)
      const room = width - (last === undefined ? 0 : last.dx + last.width)
      return { ...item, x: item.x + (align === 'right' ? room : room / 2) }
    }),
  }
}

interface Columns {
  readonly size: TextSize
  readonly gutter: number
  readonly widths: readonly number[]
  /** Whether no word is wider than its column. */
  readonly whole: boolean
}

/** At the least size columns stand as close as this, in ems: still further apart than words. */
const CLOSE = 0.9

/** The columns at the largest of the page's sizes at which every word stands whole in its column; at the least of them where none will do. */
function columnsThatFit(block: Table, area: Area, context: LayoutContext): Columns {
  const { steps, small, label } = context.style
  const gutter = GUTTER * context.style.ease
  let columns = columnsAt({ size: steps, gutter }, block, area, context)
  if (!columns.whole) columns = columnsAt({ size: small, gutter }, block, area, context)
  if (!columns.whole) columns = columnsAt({ size: label, gutter: CLOSE * label.size }, block, area, context)
  return columns
}

/** Columns as wide as their longest cell when all fit; else the widest give way, none below its longest word unless these do not fit either. */
function columnsAt(
  { size, gutter }: Pick<Columns, 'size' | 'gutter'>,
  block: Table,
  area: Area,
  context: LayoutContext,
): Columns {
  const count = Math.max(block.header.length, ...block.rows.map((cells) => cells.length))
  const room = area.width - gutter * (count - 1)
  const columns = Array.from({ length: count }, (_, index) => {
    const cells = [
      { cell: block.header[index] ?? [], header: true },
      ...block.rows.map((cells) => ({ cell: cells[index] ?? [], header: false })),
    ]
    const runs = cells.map(({ cell, header }) => cellRuns(cell, { header, size }, context))
    const natural = Math.max(0, ...runs.map((each) => oneLine(each, { fonts: context.fonts }).width))
    const words = runs.flatMap((each) =>
      each.flatMap((run) =>
        run.text.split(/\s+/).map((word) => oneLine([{ ...run, text: word }], { fonts: context.fonts }).width),
      ),
    )
    return { natural, least: Math.max(0, ...words) }
  })
  const total = columns.reduce((sum, each) => sum + each.natural, 0)
  if (total <= room) return { size, gutter, widths: columns.map((each) => each.natural), whole: true }
  const least = columns.reduce((sum, each) => sum + each.least, 0)
  if (least > room) {
    const most = cap(
      columns.map((column) => column.least),
      room,
    )
    return { size, gutter, widths: columns.map((each) => Math.min(each.least, most)), whole: false }
  }
  const share = Math.max(0, room - least) / Math.max(1, total - least)
  return { size, gutter, widths: columns.map((each) => each.least + (each.natural - each.least) * share), whole: true }
}

/** The width that the widest columns are cut to so that all of them fill the room. */
function cap(widths: readonly number[], room: number): number {
  const sorted = [...widths].sort((a, b) => a - b)
  let left = room
  for (const [index, width] of sorted.entries()) {
    const even = left / (sorted.length - index)
    if (width >= even) return even
    left -= width
  }
  return Math.max(0, ...widths)
}
