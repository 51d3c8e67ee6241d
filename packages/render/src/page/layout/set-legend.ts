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
/** Room between two signs of the key: as much as there is between these, in ems of its words. */
const LEAST_GAP = 0.94
const MOST_GAP = 1.53

/** The key to the strip: on the section's own line where it fits, else in lines of their own under it, sign under sign. */
export function setLegend(
  signs: readonly LegendSign[],
  nameWidth: number,
  area: Area,
  context: LayoutContext,
): { readonly beside: readonly PageItem[]; readonly below: readonly Row[] } {
  if (signs.length === 0) return { beside: [], below: [] }
  const { style } = context
  const em = style.label.size
  const keys = signs.map((sign) => keyOf(sign, context))
  const node = {
    role: 'Figure',
    parent: area.parent,
    alt: signs.map((sign) => context.words.legend[sign]).join(', '),
  } as const
  const natural = sum(keys.map(({ width }) => width)) + (keys.length - 1) * LEAST_GAP * em
  if (!style.large && nameWidth + NAME_GAP + natural <= area.width) {
    const drawing = inColumns([keys], area.width - nameWidth - NAME_GAP, em)
    const y = pointsOf(1.3) + 2.2
    return { beside: [{ kind: 'figure', x: area.width - drawing.width, y, drawing, node }], below: [] }
  }
  const lines = linesThatFit(keys, area.width, em)
  const drawing = inColumns(lines, area.width, em)
  const figure = { kind: 'figure', x: 0, y: 0, drawing, node } as const
  return { beside: [], below: [row(drawing.height, [figure], { before: 4, after: 4 * style.ease, keepNext: true })] }
}

function keyOf(sign: LegendSign, { fonts, style, words }: LayoutContext): Drawing {
  const { legend } = words
  const drawing = drawLegend({
    signs: [sign],
    fonts,
    widthPt: Number.MAX_SAFE_INTEGER,
    words: legend,
    textPt: style.label.size,
  })
  return { ...drawing, width: boundsOf(drawing.items, fonts)?.right ?? 0 }
}

/** The keys in as few lines as the width holds, all but the last of one length. */
function linesThatFit(keys: readonly Drawing[], width: number, em: number): readonly (readonly Drawing[])[] {
  for (let lineCount = 1; ; lineCount += 1) {
    const perLine = Math.ceil(keys.length / lineCount)
    const lines = Array.from({ length: Math.ceil(keys.length / perLine) }, (_, index) =>
      keys.slice(index * perLine, (index + 1) * perLine),
    )
    if (perLine === 1 || sum(columnWidths(lines)) + (perLine - 1) * LEAST_GAP * em <= width) return lines
  }
}

/** Each column of the lines as wide as its widest key. */
function columnWidths(lines: readonly (readonly Drawing[])[]): readonly number[] {
  return (lines[0] ?? []).map((_, index) => Math.max(...lines.map((line) => line[index]?.width ?? 0)))
}

/** Lines of keys, sign under sign, with as much room between the columns as the width gives, within bounds. */
function inColumns(lines: readonly (readonly Drawing[])[], width: number, em: number): Drawing {
  const columns = columnWidths(lines)
  const room = (width - sum(columns)) / Math.max(1, columns.length - 1)
  const gap = Math.max(LEAST_GAP * em, Math.min(MOST_GAP * em, room))
  const placed = lines.flatMap((line, index) => {
    const y = sum(lines.slice(0, index).map((above) => heightOf(above) + LINE_GAP * em))
    return line.map((drawing, at) => ({ drawing, x: sum(columns.slice(0, at)) + at * gap, y }))
  })
  return mergeDrawings(placed)
}

/** Room between two lines of keys, in ems. */
const LINE_GAP = 0.47

function heightOf(line: readonly Drawing[]): number {
  return Math.max(...line.map(({ height }) => height))
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0)
}
