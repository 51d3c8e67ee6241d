import { CURVE, MOVE } from '../../drawing/drawing.ts'
import { outline } from '../../drawing/shapes.ts'
import { strikeOf } from '../layout/column.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** Draws the wave of each vibrato over its note, as long as the note lasts. */
export function drawVibrato(plan: SystemPlan, columns: readonly PlacedColumn[], sketch: Sketch): void {
  columns.forEach((placed, i) => {
    const { column, cx } = placed
    if (column.written.tiedIn || !strikeOf(column)?.marks.includes('vibrato')) return
    const next = columns.slice(i + 1).find((candidate) => candidate.column.written.event !== column.written.event)
    const left = cx - 0.5
    const end = Math.min(
      columns.findLast((candidate) => candidate.column.written.event === column.written.event)?.placed.end ??
        placed.placed.end,
      next === undefined ? plan.width - 0.6 : next.cx - Math.max(0.9, next.column.left) - 0.3,
    )
    const right = Math.max(left + 1.6, Math.min(end, left + 7))
    const y = sketch.topOver(left, right, -0.5) - 0.75
    const step = 0.55
    const waves = Math.max(3, Math.floor((right - left) / step))
    const data: number[] = [MOVE, left, y]
    for (let wave = 0; wave < waves; wave += 1) {
      const x = left + wave * step
      const way = wave % 2 === 0 ? -0.42 : 0.42
      data.push(CURVE, x + step * 0.35, y + way, x + step * 0.65, y + way, x + step, y)
    }
    sketch.slot(column.bar.number, column.written.eventAt, outline('vibrato', data, 0.17))
  })
}
