import type { Drawing } from '../../drawing/drawing.ts'
import { line } from '../../drawing/shapes.ts'

/** The page's one ornament: a rule of four strokes, one for each beat. Its top edge is the drawing's top. */
export function fourStrokes(width: number, thickness: number, gap: number): Drawing {
  const stroke = (width - 3 * gap) / 4
  const y = thickness / 2
  return {
    kind: 'drawing',
    width,
    height: thickness,
    items: [0, 1, 2, 3].map((beat) =>
      line('rule', { x1: beat * (stroke + gap), y1: y, x2: beat * (stroke + gap) + stroke, y2: y }, thickness),
    ),
  }
}
