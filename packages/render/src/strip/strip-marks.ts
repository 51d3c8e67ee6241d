import type { DrawnItem } from '../drawing/drawing.ts'
import { setText } from '../drawing/set-text.ts'
import { line } from '../drawing/shapes.ts'
import type { ExcerptColumn } from '../engrave/layout/excerpt-columns.ts'
import type { FontSet } from '../fonts/font-set.ts'
import type { StripCell } from './strip-cells.ts'
import type { StripStyle } from './strip-style.ts'

/** Which further rows the cells of a strip need. */
export interface StripMarkRows {
  readonly accents: boolean
  readonly palmMuting: boolean
}

/** The rows for accents (over the blocks) and palm muting (under the swings), there only where they are used. */
export function stripMarkRows(cells: readonly StripCell[], palmMuting: boolean): StripMarkRows {
  return { accents: cells.some(isAccented), palmMuting: palmMuting && cells.some(isPalmMuted) }
}

interface MarkPlace {
  readonly style: StripStyle
  readonly fonts: FontSet
  readonly accentBase: number
  /** Null where no row of palm muting is drawn. */
  readonly palmTop: number | null
}

/** Source: SMuFL 1.4, articAccentAbove. */
const ACCENT = '\u{E4A0}'

/** The accents over their blocks, and one word with a line to its end for every run of palm-muted cells. */
export function drawStripMarks(
  cells: readonly StripCell[],
  columns: readonly ExcerptColumn[],
  { style, fonts, accentBase, palmTop }: MarkPlace,
): readonly DrawnItem[] {
  const items: DrawnItem[] = []
  const columnAt = (cell: StripCell): ExcerptColumn | undefined => columns.find(({ at }) => at === cell.at)
  for (const cell of cells) {
    const column = columnAt(cell)
    if (column === undefined || !isAccented(cell)) continue
    const size = style.count * 1.7
    const ink = fonts.measure('music', size, ACCENT)
    const x = column.x - (ink.left + ink.right) / 2
    items.push({
      kind: 'glyphs',
      role: 'articulation',
      face: 'music',
      size,
      text: ACCENT,
      x,
      y: accentBase,
      ink: 'ink',
    })
  }
  if (palmTop === null) return items
  for (const run of palmRuns(cells)) {
    const [first, last] = [run[0], run.at(-1)].map((cell) => (cell === undefined ? undefined : columnAt(cell)))
    if (first === undefined || last === undefined) continue
    const left = first.x - first.cell / 2 + style.hair
    const right = last.x + last.cell / 2 - style.hair
    const y = palmTop + style.word * 1.02
    const setting = { role: 'palm-mute', face: 'sans-semibold', size: style.word } as const
    const { runs, measure } = setText('P.M.', { x: left, y }, setting, fonts)
    items.push(...runs)
    const middle = y - style.word * 0.24
    const start = left + measure.width + style.word * 0.3
    if (right - start < style.word * 0.5) continue
    const dash = [style.word * 0.4, style.word * 0.3]
    items.push(line('palm-mute', { x1: start, y1: middle, x2: right, y2: middle }, style.hair, { dash }))
    items.push(line('palm-mute', { x1: right, y1: middle - style.word * 0.3, x2: right, y2: middle }, style.hair))
  }
  return items
}

function isAccented({ event, sounds }: StripCell): boolean {
  return sounds && event.kind !== 'rest' && event.marks.includes('accent')
}

function isPalmMuted({ event, sounds }: StripCell): boolean {
  return sounds && event.kind !== 'rest' && event.palmMuted
}

/** Palm-muted events that follow each other, what lasts of them between included, with nothing struck openly between. */
function palmRuns(cells: readonly StripCell[]): readonly (readonly StripCell[])[] {
  const runs: StripCell[][] = []
  let open = false
  for (const cell of cells) {
    if (cell.event.kind === 'rest') continue
    const muted = cell.event.palmMuted
    if (muted && open) runs.at(-1)?.push(cell)
    else if (muted) runs.push([cell])
    open = muted
  }
  return runs
}
