import { pointsOf } from '../../drawing/lengths.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, row } from './row.ts'

/** The thin rule between cards that do not belong together; it never opens a page. */
export function groupRule(area: Area, { style }: LayoutContext): Row {
  const { rule, large } = style
  const drawing = fourStrokes(area.width, rule.group, rule.gap)
  return row(rule.group, [{ kind: 'figure', x: 0, y: 0, drawing, node: null }], {
    before: pointsOf(large ? 4 : 3.2),
    after: pointsOf(large ? 4 : 2.2),
    keepNext: true,
    atTop: 'drop',
  })
}
