import { line } from '../../drawing/shapes.ts'
import type { PageItem } from './page-content.ts'
import { indentRows, type Row } from './row.ts'

/** Rows moved in by `inset` points, with one unbroken stroke along their left edge, `width` points wide. */
export function withLeftStroke(
  rows: readonly Row[],
  given: { readonly inset: number; readonly width: number },
): readonly Row[] {
  const moved = indentRows(rows, given.inset)
  return moved.map((each, index) => strokeBeside(each, moved[index + 1] ?? null, given.width))
}

function strokeBeside(each: Row, next: Row | null, width: number): Row {
  const height = each.height + (next === null ? 0 : Math.max(each.after, next.before))
  const stroke: PageItem = {
    kind: 'figure',
    x: 0,
    y: 0,
    drawing: {
      kind: 'drawing',
      width,
      height,
      items: [line('rule', { x1: width / 2, y1: 0, x2: width / 2, y2: height }, width)],
    },
    node: null,
  }
  return { ...each, items: [stroke, ...each.items] }
}
