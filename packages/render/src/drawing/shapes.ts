import type { FaceId } from '../fonts/face.ts'
import { CLOSE, CURVE, type GlyphRun, type Ink, LINE, MOVE, type Path, type Role } from './drawing.ts'

/** What every shape may be given besides its measures. */
export interface ShapeOptions {
  readonly ink?: Ink
  /** Lengths of dash and gap in points. */
  readonly dash?: readonly number[]
}

/** Circles and round corners are four cubic curves; this is how far their handles reach, in radii. Common practice. */
const ROUND = 0.5522847498

function path(role: Role, data: readonly number[], lineWidth: number, options: ShapeOptions): Path {
  const paint = lineWidth > 0 ? 'stroke' : 'fill'
  return { kind: 'path', role, data, paint, lineWidth, dash: options.dash ?? [], ink: options.ink ?? 'ink' }
}

/** A straight line of a width in points. */
export function line(
  role: Role,
  ends: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number },
  lineWidth: number,
  options: ShapeOptions = {},
): Path {
  return path(role, [MOVE, ends.x1, ends.y1, LINE, ends.x2, ends.y2], lineWidth, options)
}

/** A box by its top left corner. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A filled rectangle. */
export function rect(role: Role, box: Box, options: ShapeOptions = {}): Path {
  return path(role, rectData(box), 0, options)
}

/** An empty rectangle; the line runs inside the box, so that its outer edge is the box. */
export function frame(role: Role, box: Box, lineWidth: number, options: ShapeOptions = {}): Path {
  const half = lineWidth / 2
  const inner = { x: box.x + half, y: box.y + half, width: box.width - lineWidth, height: box.height - lineWidth }
  return path(role, rectData(inner), lineWidth, options)
}

function rectData({ x, y, width, height }: Box): number[] {
  return [MOVE, x, y, LINE, x + width, y, LINE, x + width, y + height, LINE, x, y + height, CLOSE]
}

/** A filled rectangle with round corners; a radius of half its height makes a bar with round ends. */
export function roundRect(role: Role, box: Box, radius: number, options: ShapeOptions = {}): Path {
  const { x, y } = box
  const r = Math.min(radius, box.width / 2, box.height / 2)
  const [right, bottom] = [x + box.width, y + box.height]
  const k = r * (1 - ROUND)
  return path(
    role,
    [
      ...[MOVE, x + r, y, LINE, right - r, y, CURVE, right - k, y, right, y + k, right, y + r],
      ...[LINE, right, bottom - r, CURVE, right, bottom - k, right - k, bottom, right - r, bottom],
      ...[LINE, x + r, bottom, CURVE, x + k, bottom, x, bottom - k, x, bottom - r],
      ...[LINE, x, y + r, CURVE, x, y + k, x + k, y, x + r, y, CLOSE],
    ],
    0,
    options,
  )
}

/** A circle about its centre, filled when the line width is 0, else drawn. */
export function circle(
  role: Role,
  centre: { readonly x: number; readonly y: number; readonly radius: number },
  lineWidth: number,
  options: ShapeOptions = {},
): Path {
  const { x, y, radius: r } = centre
  const k = r * ROUND
  return path(
    role,
    [
      ...[MOVE, x + r, y, CURVE, x + r, y + k, x + k, y + r, x, y + r, CURVE, x - k, y + r, x - r, y + k, x - r, y],
      ...[CURVE, x - r, y - k, x - k, y - r, x, y - r, CURVE, x + k, y - r, x + r, y - k, x + r, y, CLOSE],
    ],
    lineWidth,
    options,
  )
}

/** A filled shape with straight sides through points given as x y x y ... */
export function polygon(role: Role, points: readonly number[], options: ShapeOptions = {}): Path {
  return path(role, [...corners(points), CLOSE], 0, options)
}

/** A line of a width in points through points given as x y x y ... */
export function polyline(role: Role, points: readonly number[], lineWidth: number, options: ShapeOptions = {}): Path {
  return path(role, corners(points), lineWidth, options)
}

function corners(points: readonly number[]): number[] {
  const data: number[] = []
  for (let i = 0; i + 1 < points.length; i += 2) data.push(i === 0 ? MOVE : LINE, points[i] ?? 0, points[i + 1] ?? 0)
  return data
}

/** An outline given as path data, filled when the line width is 0, else drawn. */
export function outline(role: Role, data: readonly number[], lineWidth: number, options: ShapeOptions = {}): Path {
  return path(role, data, lineWidth, options)
}

/** A cross of two strokes in one path, its arms reaching `x` and `y` points from the centre. */
export function cross(
  role: Role,
  centre: { readonly x: number; readonly y: number; readonly armX: number; readonly armY: number },
  lineWidth: number,
  options: ShapeOptions = {},
): Path {
  const { x, y, armX, armY } = centre
  const data = [MOVE, x - armX, y - armY, LINE, x + armX, y + armY, MOVE, x - armX, y + armY, LINE, x + armX, y - armY]
  return path(role, data, lineWidth, options)
}

/**
 * An arc that swells in the middle, as ties and slurs do: from one end to the other, bulging by `height` points (negative is upward)
 * and `thickness` thick at its middle. Filled.
 */
export function swell(
  role: Role,
  ends: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number },
  shape: { readonly height: number; readonly thickness: number },
  options: ShapeOptions = {},
): Path {
  const { x1, y1, x2, y2 } = ends
  // A cubic reaches three quarters of the way to its handles.
  const outer = (shape.height * 4) / 3
  const inner = ((shape.height - Math.sign(shape.height) * shape.thickness) * 4) / 3
  const reach = (x2 - x1) * 0.28
  return path(
    role,
    [
      ...[MOVE, x1, y1, CURVE, x1 + reach, y1 + outer, x2 - reach, y2 + outer, x2, y2],
      ...[CURVE, x2 - reach, y2 + inner, x1 + reach, y1 + inner, x1, y1, CLOSE],
    ],
    0,
    options,
  )
}

/** Characters of one face on their base line, from the left edge. */
export function glyphs(
  role: Role,
  face: FaceId,
  size: number,
  text: string,
  at: { readonly x: number; readonly y: number },
  options: ShapeOptions = {},
): GlyphRun {
  return { kind: 'glyphs', role, face, size, text, x: at.x, y: at.y, ink: options.ink ?? 'ink' }
}
