import type { FontSet } from '../fonts/font-set.ts'
import { CLOSE, CURVE, type DrawnItem, LINE, MOVE, type Path } from './drawing.ts'

/** Edges in points, y downward. */
export interface Bounds {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The smallest box around all ink of the items, line widths included; null when there is none. Curves are measured at their extremes. */
export function boundsOf(items: readonly DrawnItem[], fonts: FontSet): Bounds | null {
  let all: Bounds | null = null
  for (const item of items) {
    const bounds = boundsOfItem(item, fonts)
    if (bounds !== null) all = all === null ? bounds : joinBounds(all, bounds)
  }
  return all
}

/** The box around two boxes. */
export function joinBounds(a: Bounds, b: Bounds): Bounds {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  }
}

function boundsOfItem(item: DrawnItem, fonts: FontSet): Bounds | null {
  switch (item.kind) {
    case 'group':
      return boundsOf(item.items, fonts)
    case 'path':
      return boundsOfPath(item)
    case 'glyphs': {
      const ink = fonts.measure(item.face, item.size, item.text)
      if (ink.right <= ink.left) return null
      return { left: item.x + ink.left, top: item.y + ink.top, right: item.x + ink.right, bottom: item.y + ink.bottom }
    }
  }
}

/** The box around a path, half its line width wider on every side when it is drawn (mitred corners may reach further). */
export function boundsOfPath({ data, lineWidth }: Path): Bounds | null {
  const across = extent()
  const down = extent()
  const at = (index: number): number => data[index] ?? 0
  let [x, y, i] = [0, 0, 0]
  while (i < data.length) {
    const command = at(i)
    if (command === CURVE) {
      addCurveExtremes(across, x, at(i + 1), at(i + 3), at(i + 5))
      addCurveExtremes(down, y, at(i + 2), at(i + 4), at(i + 6))
    }
    const length = command === CLOSE ? 0 : command === CURVE ? 6 : 2
    if (length > 0) {
      x = at(i + length - 1)
      y = at(i + length)
      if (command === MOVE || command === LINE || command === CURVE) {
        addValue(across, x)
        addValue(down, y)
      }
    }
    i += 1 + length
  }
  if (across.least > across.most) return null
  const half = lineWidth / 2
  return {
    left: across.least - half,
    top: down.least - half,
    right: across.most + half,
    bottom: down.most + half,
  }
}

/** The least and the greatest of some values; empty while the least is greater. */
interface Extent {
  least: number
  most: number
}

function extent(): Extent {
  return { least: Infinity, most: -Infinity }
}

function addValue(extent: Extent, value: number): void {
  if (value < extent.least) extent.least = value
  if (value > extent.most) extent.most = value
}

/** Adds the values at which a cubic turns back, where they lie inside it. */
function addCurveExtremes(extent: Extent, p0: number, p1: number, p2: number, p3: number): void {
  const a = -p0 + 3 * p1 - 3 * p2 + p3
  const b = 2 * (p0 - 2 * p1 + p2)
  const c = p1 - p0
  const roots = Math.abs(a) < 1e-12 ? (Math.abs(b) < 1e-12 ? [] : [-c / b]) : quadraticRoots(a, b, c)
  for (const t of roots) {
    if (t <= 0 || t >= 1) continue
    const u = 1 - t
    addValue(extent, u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3)
  }
}

function quadraticRoots(a: number, b: number, c: number): number[] {
  const inside = b * b - 4 * a * c
  if (inside < 0) return []
  const root = Math.sqrt(inside)
  return [(-b + root) / (2 * a), (-b - root) / (2 * a)]
}
