import type { PathCommand } from 'fontkit'
import { CLOSE, CURVE, LINE, MOVE } from '../drawing/drawing.ts'

/** The outline of a glyph in font units, y upward, turned into path data in ems, y downward, quadratic curves raised to cubic ones. */
export function glyphPath(commands: readonly PathCommand[], unitsPerEm: number): readonly number[] {
  const data: number[] = []
  let [x, y] = [0, 0]
  const point = (args: readonly number[], index: number): [number, number] => [
    (args[index] ?? 0) / unitsPerEm,
    -(args[index + 1] ?? 0) / unitsPerEm,
  ]
  for (const { command, args } of commands) {
    switch (command) {
      case 'moveTo':
        ;[x, y] = point(args, 0)
        data.push(MOVE, x, y)
        break
      case 'lineTo':
        ;[x, y] = point(args, 0)
        data.push(LINE, x, y)
        break
      case 'quadraticCurveTo': {
        const [cx, cy] = point(args, 0)
        const [endX, endY] = point(args, 2)
        data.push(CURVE, x + (2 / 3) * (cx - x), y + (2 / 3) * (cy - y))
        data.push(endX + (2 / 3) * (cx - endX), endY + (2 / 3) * (cy - endY), endX, endY)
        ;[x, y] = [endX, endY]
        break
      }
      case 'bezierCurveTo':
        data.push(CURVE, ...point(args, 0), ...point(args, 2), ...point(args, 4))
        ;[x, y] = point(args, 4)
        break
      case 'closePath':
        data.push(CLOSE)
        break
    }
  }
  return data
}
