import { glyphs } from '../../drawing/shapes.ts'
import { countLabel } from '../count-label.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** The rows under the tab that are wanted. */
export interface RowsBelow {
  readonly strokes: boolean
  readonly counts: boolean
}

const STROKES = { down: '\ue610', up: '\ue612' } as const

/** Draws the row of stroke signs and the count row under `bottom`; each keeps its place in every system. Returns the lowest base line. */
export function drawRowsBelow(
  plan: SystemPlan,
  columns: readonly PlacedColumn[],
  bottom: number,
  rows: RowsBelow,
  sketch: Sketch,
): number {
  let y = bottom
  if (rows.strokes) {
    y += plan.style.rowDrop.strokes
    for (const { column, cx } of columns) {
      const { event, tiedIn } = column.written
      if (event.kind === 'rest' || tiedIn || (event.stroke !== 'down' && event.stroke !== 'up')) continue
      const sign = STROKES[event.stroke]
      const size = 3.5
      const ink = plan.fonts.measure('music', size, sign)
      const at = { x: cx - (ink.left + ink.right) / 2, y: y - 0.5 - (ink.top + ink.bottom) / 2 }
      sketch.slot(column.bar.number, column.written.eventAt, glyphs('stroke-sign', 'music', size, sign, at))
    }
    y += 0.2
  }
  if (rows.counts) {
    // Right under the tab it keeps clear of the figures on the lowest string.
    y += rows.strokes ? plan.style.rowDrop.counts : plan.style.rowDrop.countsAlone
    for (const { column, cx } of columns) {
      const label = countLabel(column.bar, column.written.at)
      if (label === null || column.written.wholeBar) continue
      const silent = column.kind === 'rest' || column.written.tiedIn
      const text = silent ? `(${label.text})` : label.text
      const face = label.beat && !silent ? 'sans-bold' : 'sans'
      const { width } = plan.fonts.measure(face, plan.style.count, text)
      const at = { x: cx - width / 2, y }
      sketch.slot(
        column.bar.number,
        column.written.eventAt,
        glyphs('count', face, plan.style.count, text, at, { ink: silent ? 'quiet' : 'ink' }),
      )
    }
    y += 0.2
  }
  return y
}
