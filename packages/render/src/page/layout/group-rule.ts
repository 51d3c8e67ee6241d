import { pointsOf } from '../../drawing/lengths.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, row } from './row.ts'

/** The thin rule between cards that do not belong together; it never opens a page. */
export function groupRule(area: Area, { style }: LayoutContext): Row {
  const { rule, ease } = style
  const drawing = fourStrokes(area.width, rule.group, rule.gap)
  return row(rule.group, [{ kind: 'figure', x: 0, y: 0, drawing, node: null }], {
    before: pointsOf(3.2) * ease,
    after: pointsOf(2.2) * ease,
    keepNext: true,
    atTop: 'drop',
  })
}
