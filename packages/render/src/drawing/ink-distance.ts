import type { Ink } from './flatten.ts'

/** The distance of the ink of two items in points; 0 when they touch, overlap, or one lies inside the other. */
export function inkDistance(a: Ink, b: Ink): number {
  if (contains(a, b) || contains(b, a)) return 0
  const thick = a.half + b.half
  let least = Infinity
  for (const one of a.outlines) {
    for (const other of b.outlines) {
      least = Math.min(least, outlineDistance(one, other))
      if (least <= thick) return 0
    }
  }
  return Math.max(0, least - thick)
}

/** Whether a point of `b` lies inside the filled `a` (by the even-odd rule over all its rings). */
function contains(a: Ink, b: Ink): boolean {
  if (!a.filled) return false
  return b.outlines.some((ring) => inside(a.outlines, ring[0] ?? 0, ring[1] ?? 0))
}

function inside(rings: readonly (readonly number[])[], x: number, y: number): boolean {
  let odd = false
  for (const ring of rings) {
    for (let i = 0; i + 3 < ring.length; i += 2) {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = ring.slice(i, i + 4)
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) odd = !odd
    }
  }
  return odd
}

function outlineDistance(one: readonly number[], other: readonly number[]): number {
  let least = Infinity
  for (let i = 0; i + 3 < one.length; i += 2) {
    for (let k = 0; k + 3 < other.length; k += 2) {
      least = Math.min(least, sideDistance(one, i, other, k))
      if (least === 0) return 0
    }
  }
  return least
}

/** The distance of two straight sides. */
function sideDistance(one: readonly number[], i: number, other: readonly number[], k: number): number {
  const [ax, ay, bx, by] = [one[i] ?? 0, one[i + 1] ?? 0, one[i + 2] ?? 0, one[i + 3] ?? 0]
  const [cx, cy, dx, dy] = [other[k] ?? 0, other[k + 1] ?? 0, other[k + 2] ?? 0, other[k + 3] ?? 0]
  if (turn(ax, ay, bx, by, cx, cy) * turn(ax, ay, bx, by, dx, dy) < 0) {
    if (turn(cx, cy, dx, dy, ax, ay) * turn(cx, cy, dx, dy, bx, by) < 0) return 0
  }
  return Math.min(
    pointDistance(ax, ay, cx, cy, dx, dy),
    pointDistance(bx, by, cx, cy, dx, dy),
    pointDistance(cx, cy, ax, ay, bx, by),
    pointDistance(dx, dy, ax, ay, bx, by),
  )
}

/** On which side of the line from a to b a point lies. */
function turn(ax: number, ay: number, bx: number, by: number, px: number, py: number): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax)
}

/** The distance of a point from a straight side. */
function pointDistance(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / square))
  return Math.hypot(px - ax - t * dx, py - ay - t * dy)
}
