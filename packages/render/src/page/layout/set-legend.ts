import { boundsOf } from '../../drawing/bounds.ts'
import type { Drawing } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { mergeDrawings } from '../../drawing/place.ts'
import { drawLegend, type LegendSign } from '../../strip/legend.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem } from './page-content.ts'
import { type Row, row } from './row.ts'

/** Room between the section's name and a key on its line. */
const NAME_GAP = pointsOf(5)
/** Room between two signs of the key: as much as there is between these, in points. */
const LEAST_GAP = 8
const MOST_GAP = 13

/** The key to the strip: on the section's own line where it fits, else in lines of their own under it, filled evenly. */
export function setLegend(
  signs: readonly LegendSign[],
  nameWidth: number,
  area: Area,
  context: LayoutContext,
): { readonly beside: readonly PageItem[]; readonly below: readonly Row[] } {
  if (signs.length === 0) return { beside: [], below: [] }
  const keys = signs.map((sign) => keyOf(sign, context))
  const node = {
    role: 'Figure',
    parent: area.parent,
    alt: signs.map((sign) => context.words.legend[sign]).join(', '),
  } as const
  const natural = (count: number): number =>
    keys.reduce((sum, key) => sum + key.width, 0) / count + (keys.length / count - 1) * LEAST_GAP
  if (nameWidth + NAME_GAP + natural(1) <= area.width) {
    const drawing = line(keys, area.width - nameWidth - NAME_GAP)
    const y = pointsOf(1.3) + 2.2
    return { beside: [{ kind: 'figure', x: area.width - drawing.width, y, drawing, node }], below: [] }
  }
  const lines = Math.ceil(natural(1) / area.width)
  const perLine = Math.ceil(keys.length / lines)
  const rows: Row[] = []
  for (let from = 0; from < keys.length; from += perLine) {
    const drawing = line(keys.slice(from, from + perLine), area.width)
    rows.push(
      row(drawing.height, [{ kind: 'figure', x: 0, y: 0, drawing, node }], { before: 4, after: 4, keepNext: true }),
    )
  }
  return { beside: [], below: rows }
}

function keyOf(sign: LegendSign, { fonts, style, words }: LayoutContext): Drawing {
  const { legend } = words
  const drawing = drawLegend({
    signs: [sign],
    fonts,
    widthPt: Number.MAX_SAFE_INTEGER,
    words: legend,
    textPt: style.small.size,
  })
  return { ...drawing, width: boundsOf(drawing.items, fonts)?.right ?? 0 }
}

/** Keys side by side with as much room between as the width gives, within bounds. */
function line(keys: readonly Drawing[], width: number): Drawing {
  const inked = keys.reduce((sum, key) => sum + key.width, 0)
  const gap = Math.max(LEAST_GAP, Math.min(MOST_GAP, (width - inked) / Math.max(1, keys.length - 1)))
  let x = 0
  const placed = keys.map((drawing) => {
    const at = { drawing, x, y: 0 }
    x += drawing.width + gap
    return at
  })
  return mergeDrawings(placed)
}
