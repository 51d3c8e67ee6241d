import { type Bounds, boundsOf } from '../../src/drawing/bounds.ts'
import type { DrawnItem, Role } from '../../src/drawing/drawing.ts'
import type { FontSet } from '../../src/fonts/font-set.ts'

/** One drawn item with its ink box, and the bar and event it belongs to. */
export interface DrawnBox extends Bounds {
  readonly role: Role
  readonly bar: number | null
  readonly at: number | null
  readonly item: DrawnItem
}

/** All ink of a drawing as boxes. */
export function drawnBoxes(
  items: readonly DrawnItem[],
  fonts: FontSet,
  bar: number | null = null,
  at: number | null = null,
): readonly DrawnBox[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return drawnBoxes(item.items, fonts, item.bar, item.at)
    const bounds = boundsOf([item], fonts)
    return bounds === null ? [] : [{ ...bounds, role: item.role, bar, at, item }]
  })
}

/** Whether two boxes overlap by more than `by` points both ways. */
export function overlap(a: Bounds, b: Bounds, by: number): boolean {
  return (
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > by &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > by
  )
}
