import type { Bar, Part, Ticks } from '@barwise/parser'
import type { Drawing, DrawnItem } from '../drawing/drawing.ts'
import { setText } from '../drawing/set-text.ts'
import { line } from '../drawing/shapes.ts'
import { countLabel } from '../engrave/count-label.ts'
import { type ExcerptColumn, excerptGrid } from '../engrave/layout/excerpt-columns.ts'
import type { FontSet } from '../fonts/font-set.ts'
import { blockHalf, type CellPlace, drawBlock, drawRing } from './draw-block.ts'
import { drawSwing } from './draw-swing.ts'
import { type StripCell, stripCells } from './strip-cells.ts'
import { drawStripMarks, stripMarkRows } from './strip-marks.ts'
import { type StripStyle, stripStyle } from './strip-style.ts'

export interface DrawStripInput {
  readonly part: Part
  readonly bar: Bar
  readonly fonts: FontSet
  /** The stretch of the bar; the whole of it by default. Ticks from its start. */
  readonly fromTicks?: Ticks
  readonly toTicks?: Ticks
  readonly style?: StripStyle
  /** Columns to stand in, when the strip hangs under an excerpt; else the strip lays its own. */
  readonly columns?: readonly ExcerptColumn[]
  /** Bars of a stretch share rows: whether the row of stroke signs is kept although this one has none. */
  readonly strokeRow?: boolean
  /** Whether palm muting is marked under the swings, as it is unless the staff above says it. */
  readonly palmMuting?: boolean
}

/** A strip and what it shows; the columns are those it stands in. */
export interface DrawnStrip {
  readonly drawing: Drawing
  readonly cells: readonly StripCell[]
  readonly columns: readonly ExcerptColumn[]
}

/**
 * Draws the strum strip of a bar: a cell for each slot with its count, its block and the swing of the hand. Width is time, height is attack, what is
 * low lasts. Every event is one group, so that it can be lit as a whole.
 */
export function drawStrip(input: DrawStripInput): DrawnStrip {
  const { part, bar, fonts } = input
  const style = input.style ?? stripStyle()
  const [fromTicks, toTicks] = [input.fromTicks ?? 0, input.toTicks ?? bar.length]
  const columns =
    input.columns ?? excerptGrid({ bar, fromTicks, toTicks, left: 0, cell: style.cell, beatGap: style.beatGap }).columns
  const cells = stripCells(part, bar, columns)
  const marks = stripMarkRows(cells, input.palmMuting ?? true)
  const countBase = style.count * 0.76
  const top = style.count * 1.12 + (marks.accents ? style.count * 0.5 : 0)
  const floor = top + style.blockHeight
  const strokeTop = floor + style.stroke * 0.42
  const strokes = input.strokeRow === true || cells.some(({ swing }) => swing !== null)
  const strokeBottom = strokes ? strokeTop + style.stroke * 1.08 : floor + style.floor
  const bottom = strokeBottom + (marks.palmMuting ? style.word * 1.35 : 0)
  const rows: Rows = { bar, style, fonts, top, floor, countBase, strokeTop }
  const items: DrawnItem[] = [...floors(columns, rows)]
  for (const run of eventRuns(cells)) {
    const held = ring(run, columns, toTicks, rows)
    const drawn = run.flatMap((cell) => cellItems(cell, columns, rows))
    items.push({ kind: 'group', name: 'slot', bar: bar.number, at: run[0]?.eventAt ?? 0, items: [...held, ...drawn] })
  }
  items.push(
    ...drawStripMarks(cells, columns, {
      style,
      fonts,
      accentBase: top - style.count * 0.16,
      palmTop: marks.palmMuting ? strokeBottom : null,
    }),
  )
  const last = columns.at(-1)
  const width = last === undefined ? 0 : last.x + last.cell / 2
  return { drawing: { kind: 'drawing', width, height: bottom, items }, cells, columns }
}

interface Rows {
  readonly bar: Bar
  readonly style: StripStyle
  readonly fonts: FontSet
  readonly top: number
  readonly floor: number
  readonly countBase: number
  readonly strokeTop: number
}

/** Cells of one event together, in order. */
function eventRuns(cells: readonly StripCell[]): readonly (readonly StripCell[])[] {
  const runs: StripCell[][] = []
  for (const cell of cells) {
    const run = runs.at(-1)
    if (run !== undefined && run[0]?.eventAt === cell.eventAt) run.push(cell)
    else runs.push([cell])
  }
  return runs
}

/** A floor under each run of cells without a gap: the beats stand apart. */
function floors(columns: readonly ExcerptColumn[], { floor, style }: Rows): DrawnItem[] {
  const items: DrawnItem[] = []
  let start = columns[0]
  columns.forEach((column, index) => {
    const next = columns[index + 1]
    const end = column.x + column.cell / 2
    if (start === undefined || (next !== undefined && next.x - next.cell / 2 - end < 0.01)) return
    const inset = style.cell * 0.06
    const y = floor + style.floor / 2
    items.push(
      line('strip-floor', { x1: start.x - start.cell / 2 + inset, y1: y, x2: end - inset, y2: y }, style.floor),
    )
    start = next
  })
  return items
}

function cellItems(cell: StripCell, columns: readonly ExcerptColumn[], rows: Rows): readonly DrawnItem[] {
  const column = columns.find(({ at }) => at === cell.at)
  if (column === undefined) return []
  const { style, fonts } = rows
  const place: CellPlace = { x: column.x, cell: column.cell, top: rows.top, floor: rows.floor }
  // Against the usual cell: those of a figure may have grown.
  const narrow = Math.min(1, column.cell / Math.min(style.cell, stripStyle(style.leastText).cell))
  const swing =
    cell.swing === null ? [] : drawSwing(cell.swing, column.x, rows.strokeTop, style.stroke * Math.max(0.6, narrow))
  return [...count(cell, column, rows), ...drawBlock(cell, place, style, fonts), ...swing]
}

/** The count: beats bold and larger; in brackets and lighter where nothing new sounds; a dot where the trade has no word. */
function count(cell: StripCell, column: ExcerptColumn, { bar, style, fonts, countBase }: Rows): readonly DrawnItem[] {
  const label = countLabel(bar, cell.at)
  const plain = label?.text ?? '·'
  const text = cell.sounds ? plain : `(${plain})`
  const beat = label?.beat ?? false
  const size = Math.max(style.leastText, style.count * (beat ? 1 : 0.86))
  const face = beat && cell.sounds ? 'sans-bold' : 'sans'
  const setting = { role: 'count', face, ink: cell.sounds ? 'ink' : 'quiet', align: 'centre' } as const
  const at = { x: column.x, y: countBase }
  const width = setText(text, at, { ...setting, size }, fonts).measure.width
  const fitted = Math.max(Math.min(style.leastText, size), size * Math.min(1, (column.cell * 0.98) / width))
  return setText(text, at, { ...setting, size: fitted }, fonts).runs
}

/** The band of what rings on: from the block, or from the left edge when held in, to the last cell or over the edge of the stretch. */
function ring(run: readonly StripCell[], columns: readonly ExcerptColumn[], toTicks: Ticks, rows: Rows): DrawnItem[] {
  const lasting = run.filter(({ state }) => state === 'ring')
  const [first, last] = [run[0], run.at(-1)]
  const whole = run.some(
    ({ state }) => state === 'ring' || state === 'struck' || state === 'slid-into' || state === 'unstruck',
  )
  if (first === undefined || last === undefined || !whole) return []
  const columnOf = (cell: StripCell): ExcerptColumn | undefined => columns.find(({ at }) => at === cell.at)
  const [from, to] = [columnOf(first), columnOf(last)]
  const goesOn = first.eventAt + first.event.duration > toTicks
  if (from === undefined || to === undefined || (lasting.length === 0 && !goesOn)) return []
  const { style } = rows
  const left = first.state === 'ring' ? from.x - from.cell / 2 : from.x + blockHalf(from.cell, style) * 0.98
  const right = goesOn ? to.x + to.cell / 2 : to.x + blockHalf(to.cell, style)
  return [drawRing(left, right, rows)]
}
