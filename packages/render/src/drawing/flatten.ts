import type { FontSet } from '../fonts/font-set.ts'
import { type Bounds, boundsOf } from './bounds.ts'
import { CLOSE, CURVE, type DrawnItem, type GlyphRun, MOVE, type Path, type Role } from './drawing.ts'
import { transformPathData } from './place.ts'

/** An item of a drawing as ink: its outlines as rings of straight sides (x y x y ...), open ones for lines. Points. */
export interface Ink {
  readonly role: Role
  /** The bar and ticks of the innermost group around it; null outside groups. */
  readonly bar: number | null
  readonly at: number | null
  readonly bounds: Bounds
  readonly outlines: readonly (readonly number[])[]
  readonly filled: boolean
  /** Half the width of the line; 0 when filled. */
  readonly half: number
  /** What it says, when it is text. */
  readonly text: string
}

/** Sides a curve is cut into: a quarter circle of a dot errs by less than a hundredth of its radius. */
const SIDES = 6

/** Every inked item of a drawing, groups taken apart, in the order drawn. */
export function inkOf(items: readonly DrawnItem[], fonts: FontSet): readonly Ink[] {
  const found: Ink[] = []
  const visit = (inner: readonly DrawnItem[], bar: number | null, at: number | null): void => {
    for (const item of inner) {
      if (item.kind === 'group') visit(item.items, item.bar, item.at)
      else {
        const bounds = boundsOf([item], fonts)
        if (bounds === null) continue
        found.push({ role: item.role, bar, at, bounds, ...outlinesOf(item, fonts) })
      }
    }
  }
  visit(items, null, null)
  return found
}

function outlinesOf(item: Path | GlyphRun, fonts: FontSet): Pick<Ink, 'outlines' | 'filled' | 'half' | 'text'> {
  if (item.kind === 'path') {
    return { outlines: flattenPath(item.data), filled: item.paint === 'fill', half: item.lineWidth / 2, text: '' }
  }
  const outlines = fonts.layOut(item.face, item.text).flatMap(({ glyph, x, y }) => {
    const data = fonts.glyphOutline(item.face, glyph)
    return flattenPath(transformPathData(data, item.size, item.x + x * item.size, item.y + y * item.size))
  })
  return { outlines, filled: true, half: 0, text: item.text }
}

/** Path data as rings of points; a closed ring ends where it began. */
export function flattenPath(data: readonly number[]): readonly (readonly number[])[] {
  const rings: number[][] = []
  let ring: number[] = []
  const at = (index: number): number => data[index] ?? 0
  let i = 0
  while (i < data.length) {
    const command = data[i]
    const [x, y] = [ring.at(-2) ?? 0, ring.at(-1) ?? 0]
    if (command === CLOSE) {
      ring.push(ring[0] ?? 0, ring[1] ?? 0)
      i += 1
    } else if (command === CURVE) {
      for (let side = 1; side <= SIDES; side += 1) {
        const t = side / SIDES
        ring.push(cubic(t, x, at(i + 1), at(i + 3), at(i + 5)), cubic(t, y, at(i + 2), at(i + 4), at(i + 6)))
      }
      i += 7
    } else {
      if (command === MOVE) {
        ring = []
        rings.push(ring)
      }
      ring.push(at(i + 1), at(i + 2))
      i += 3
    }
  }
  return rings
}

function cubic(t: number, p0: number, p1: number, p2: number, p3: number): number {
  const u = 1 - t
  return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3
}
