import { assertNever } from '@barwise/parser'
import { CLOSE, CURVE, type Drawing, type DrawnItem } from './drawing.ts'

/** The items moved right by `dx` and down by `dy` points. */
export function translate(items: readonly DrawnItem[], dx: number, dy: number): readonly DrawnItem[] {
  return transformItems(items, 1, dx, dy)
}

/** The items enlarged about the origin; line widths and dashes too. */
export function scale(items: readonly DrawnItem[], factor: number): readonly DrawnItem[] {
  return transformItems(items, factor, 0, 0)
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

function transformItems(items: readonly DrawnItem[], k: number, dx: number, dy: number): readonly DrawnItem[] {
  if (k === 1 && dx === 0 && dy === 0) return items
  return items.map((item) => transformItem(item, k, dx, dy))
}

function transformItem(item: DrawnItem, k: number, dx: number, dy: number): DrawnItem {
  switch (item.kind) {
    case 'group':
      return { ...item, items: transformItems(item.items, k, dx, dy) }
    case 'glyphs':
      return { ...item, x: item.x * k + dx, y: item.y * k + dy, size: item.size * k }
    case 'path': {
      const dash = k === 1 ? item.dash : item.dash.map((length) => length * k)
      return { ...item, data: transformPathData(item.data, k, dx, dy), lineWidth: item.lineWidth * k, dash }
    }
    default:
      return assertNever(item)
  }
}

/** Path data enlarged by `k`, then moved; commands stay as they are. */
export function transformPathData(data: readonly number[], k: number, dx: number, dy: number): number[] {
  const moved: number[] = []
  let i = 0
  while (i < data.length) {
    const command = data[i] ?? CLOSE
    const pairs = command === CLOSE ? 0 : command === CURVE ? 3 : 1
    moved.push(command)
    for (let pair = 0; pair < pairs; pair += 1) {
      const at = i + 1 + pair * 2
      moved.push((data[at] ?? 0) * k + dx, (data[at + 1] ?? 0) * k + dy)
    }
    i += 1 + pairs * 2
  }
  return moved
}
