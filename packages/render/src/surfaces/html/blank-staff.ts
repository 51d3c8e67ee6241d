import type { Element } from 'hast'
import { pointsOf } from '../../drawing/lengths.ts'
import { drawEmptySystem } from '../../engrave/empty-system.ts'
import { fitted } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

const COLUMN_PT = pointsOf(174)
const BARS_A_SYSTEM = 4

/** Empty staves to write in, four bars to a system. */
export function blankStaff(bars: number, context: PageContext): Element {
  const systems: Element[] = []
  for (let from = 0; from < bars; from += BARS_A_SYSTEM) {
    const count = Math.min(BARS_A_SYSTEM, bars - from)
    const drawing = drawEmptySystem({
      bars: count,
      strings: context.lesson.instrument.tuning.length,
      widthPt: (COLUMN_PT * count) / Math.min(BARS_A_SYSTEM, bars),
      staffSpacePt: context.screen.blankStaffSpacePt,
    })
    context.drawings.push(drawing)
    systems.push(fitted(drawingNode(drawing, context.words.blank(count), context.fonts), drawing, COLUMN_PT))
  }
  return el('div', 'blank', systems)
}
