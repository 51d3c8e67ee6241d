import { assertNever } from '@barwise/parser'
import { CLOSE, CURVE, type Drawing, type DrawnItem } from './drawing.ts'

/** The items moved right by `dx` and down by `dy` points. */
export function translate(items: readonly DrawnItem[], dx: number, dy: number): readonly DrawnItem[] {
  return dx === 0 && dy === 0 ? items : transformItems(items, { dx, dy, k: 1 })
}

/** The items enlarged about the origin; line widths and dashes too. */
export function scale(items: readonly DrawnItem[], factor: number): readonly DrawnItem[] {
  return factor === 1 ? items : transformItems(items, { dx: 0, dy: 0, k: factor })
}

/** The items moved, then enlarged about the origin, in one pass: the same as `scale(translate(items, dx, dy), factor)`. */
export function translateAndScale(
  items: readonly DrawnItem[],
  { dx, dy, factor }: { readonly dx: number; readonly dy: number; readonly factor: number },
): readonly DrawnItem[] {
  return transformItems(items, { dx, dy, k: factor })
}

/** A drawing enlarged, as `scaleDrawing(system, 0.8)`. */
export function scaleDrawing(drawing: Drawing, factor: number): Drawing {
  return {
    kind: 'drawing',
    width: drawing.width * factor,
    height: drawing.height * factor,
    items: scale(drawing.items, factor),
  }
}

/** Drawings laid over each other, each with its top left corner at its place; the result is as large as needed to hold them. */
export function mergeDrawings(
  placed: readonly { readonly drawing: Drawing; readonly x: number; readonly y: number }[],
): Drawing {
  return {
    kind: 'drawing',
    width: Math.max(0, ...placed.map(({ drawing, x }) => x + drawing.width)),
    height: Math.max(0, ...placed.map(({ drawing, y }) => y + drawing.height)),
    items: placed.flatMap(({ drawing, x, y }) => translate(drawing.items, x, y)),
  }
}

interface Transform {
  readonly dx: number
  readonly dy: number
  /** Applied after the move. */
  readonly k: number
}

function transformItems(items: readonly DrawnItem[], by: Transform): readonly DrawnItem[] {
  return items.map((item) => transformItem(item, by))
}

function transformItem(item: DrawnItem, by: Transform): DrawnItem {
  const { dx, dy, k } = by
  switch (item.kind) {
    case 'group':
      return { ...item, items: transformItems(item.items, by) }
    case 'glyphs':
      return { ...item, x: (item.x + dx) * k, y: (item.y + dy) * k, size: item.size * k }
    case 'path': {
      const dash = k === 1 ? item.dash : item.dash.map((length) => length * k)
      const data = eachCoordinate(
        item.data,
        (x) => (x + dx) * k,
        (y) => (y + dy) * k,
      )
      return { ...item, data, lineWidth: item.lineWidth * k, dash }
    }
    default:
      return assertNever(item)
  }
}

/** Path data enlarged by `k`, then moved; commands stay as they are. */
export function transformPathData(data: readonly number[], k: number, dx: number, dy: number): number[] {
  return eachCoordinate(
    data,
    (x) => x * k + dx,
    (y) => y * k + dy,
  )
}

/** Path data with every x and every y replaced by what is made of it. */
function eachCoordinate(data: readonly number[], ofX: (x: number) => number, ofY: (y: number) => number): number[] {
  const made = data.slice()
  let i = 0
  while (i < data.length) {
    const command = data[i] ?? CLOSE
    const end = i + 1 + (command === CLOSE ? 0 : command === CURVE ? 6 : 2)
    for (let at = i + 1; at < end; at += 2) {
      made[at] = ofX(data[at] ?? 0)
      made[at + 1] = ofY(data[at + 1] ?? 0)
    }
    i = end
  }
  return made
}
