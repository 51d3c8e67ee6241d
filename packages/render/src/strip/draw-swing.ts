import type { DrawnItem } from '../drawing/drawing.ts'
import { polyline, rect } from '../drawing/shapes.ts'
import type { Swing } from './strip-cells.ts'

/** Size of a sign that only shows the hand passing, against one that plays. */
const IDLE = 0.62
/** Line width in heights of the sign. */
const WEIGHTS = { heavy: 0.15, medium: 0.115, thin: 0.075 } as const

/**
 * The stroke sign of a cell, centred on `x`, in a row `size` high: the square bracket for down, open below, with a filled top when it plays; the V
 * for up. Common practice of bowed and plucked strings.
 */
export function drawSwing(swing: Swing, x: number, top: number, size: number): readonly DrawnItem[] {
  const plays = swing.weight !== 'thin'
  const scale = plays ? 1 : IDLE
  const width = WEIGHTS[swing.weight] * size
  const [w, h] = [size * 0.78 * scale, size * scale]
  const y = top + (size - h) / 2
  const [left, right] = [x - w / 2, x + w / 2]
  if (swing.direction === 'up') {
    return [polyline('stroke-sign', [left, y, x, y + h, right, y], width)]
  }
  const legs = polyline('stroke-sign', [left, y + h, left, y, right, y, right, y + h], width)
  const half = width / 2
  const cap = { x: left - half, y: y - half, width: w + width, height: h * 0.3 }
  return plays ? [legs, rect('stroke-sign', cap)] : [legs]
}
