import { boundsOf } from '../../drawing/bounds.ts'
import type { Drawing } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { drawLegend, type LegendSign } from '../../strip/legend.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem } from './page-content.ts'
import { type Row, row } from './row.ts'

/** Room that the section's name takes before a key may stand on its line. */
const NAME_ROOM = pointsOf(27)

/** The key to the strip: on the section's own line where it fits, else on a line of its own under it. */
export function setLegend(
  signs: readonly LegendSign[],
  area: Area,
  context: LayoutContext,
): { readonly beside: readonly PageItem[]; readonly below: readonly Row[] } {
  if (signs.length === 0) return { beside: [], below: [] }
  const { fonts, style } = context
  const textPt = style.small.size
  const wide = drawLegend({ signs, fonts, widthPt: 100_000, textPt })
  const natural = boundsOf(wide.items, fonts)?.right ?? 0
  const alone = natural > area.width - NAME_ROOM
  const drawing: Drawing = alone
    ? drawLegend({ signs, fonts, widthPt: area.width, textPt })
    : { ...wide, width: natural }
  const node = { role: 'Figure', parent: area.parent, alt: signs.join(', ') } as const
  const figure = (x: number, y: number): PageItem => ({ kind: 'figure', x, y, drawing, node })
  if (!alone) return { beside: [figure(area.width - natural, pointsOf(1.3) + 2.2)], below: [] }
  return { beside: [], below: [row(drawing.height, [figure(0, 0)], { before: 4, after: 4, keepNext: true })] }
}
