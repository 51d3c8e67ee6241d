import { pointsOf } from '../../drawing/lengths.ts'
import { drawEmptySystem } from '../../engrave/empty-system.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { StructNode } from './page-content.ts'
import { type Row, row } from './row.ts'

/** Bars of an empty system: as many as a hand can write in comfortably, fewer in large print. */
const BARS_A_SYSTEM = { usual: 4, large: 2 } as const
/** More than stands between staff and tab, so that the eye joins the right ones. */
const SYSTEM_GAP_MM = 11

/** Empty staff and tab to write in, with bar lines; a tab line for each string of the lesson's instrument. */
export function setBlankStaves(bars: number, area: Area, context: LayoutContext): readonly Row[] {
  const rows: Row[] = []
  const most = BARS_A_SYSTEM[context.style.large ? 'large' : 'usual']
  for (let from = 0; from < bars; from += most) {
    const count = Math.min(most, bars - from)
    const drawing = drawEmptySystem({
      bars: count,
      strings: context.lesson.instrument.tuning.length,
      widthPt: (area.width * count) / Math.min(most, bars),
      staffSpacePt: context.style.staffSpace,
    })
    const node: StructNode = { role: 'Figure', parent: area.parent, alt: context.words.blank(count) }
    const figure = { kind: 'figure', x: 0, y: 0, drawing, node } as const
    rows.push(row(drawing.height, [figure], { before: pointsOf(from === 0 ? 6 : SYSTEM_GAP_MM), after: pointsOf(5) }))
  }
  return rows
}
