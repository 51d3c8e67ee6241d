import type { Drawing, DrawnItem } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { setText } from '../../drawing/set-text.ts'
import { frame, line } from '../../drawing/shapes.ts'
import type { FontSet } from '../../fonts/font-set.ts'

/** Rungs that climb from left to right, each a stroke over its tempo and a box to tick. All of it grows with the size of the figures, in points. */
export function tempoLadder(
  bpms: readonly number[],
  given: { readonly width: number; readonly size: number; readonly fonts: FontSet },
): Drawing {
  const { width, size, fonts } = given
  // The measures were judged by eye at 8.5 pt.
  const scale = size / 8.5
  const gap = pointsOf(1.2) * scale
  const rung = (width - gap * (bpms.length - 1)) / bpms.length
  const climb = pointsOf(1.65) * scale
  const box = pointsOf(3) * scale
  const items: DrawnItem[] = bpms.flatMap((bpm, index) => {
    const x = index * (rung + gap)
    const top = (bpms.length - 1 - index) * climb
    const centre = x + rung / 2
    const stroke = { x1: x, y1: top + 0.7 * scale, x2: x + rung, y2: top + 0.7 * scale }
    const at = { x: centre, y: top + 10.4 * scale }
    const square = { x: centre - box / 2, y: top + 13.4 * scale, width: box, height: box }
    return [
      line('rule', stroke, pointsOf(0.5) * scale),
      ...setText(String(bpm), at, { role: 'text', face: 'sans-semibold', size, align: 'centre' }, fonts).runs,
      frame('rule', square, 0.7 * scale),
    ]
  })
  const height = (bpms.length - 1) * climb + (13.4 + 1) * scale + box
  return { kind: 'drawing', width, height, items }
}
