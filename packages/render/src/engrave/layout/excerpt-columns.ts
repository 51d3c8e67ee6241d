import { type Bar, metreShape, slotTicks, type Ticks } from '@barwise/parser'

/** One column of an excerpt: a slot of the grid or a part of a cut. `x` is its centre. */
export interface ExcerptColumn {
  /** Ticks from the start of the bar. */
  readonly at: Ticks
  readonly ticks: Ticks
  readonly x: number
  /** Width of its cell. */
  readonly cell: number
}

/** The columns of a stretch of a bar in equal cells with a gap between felt beats, and the place of any tick among them. */
export interface ExcerptGrid {
  readonly columns: readonly ExcerptColumn[]
  readonly left: number
  readonly right: number
  /** Centre of whatever begins at a tick: that of its cell, or its share of a cell it lies inside of. */
  xAt(at: Ticks): number
}

export interface ExcerptGridInput {
  readonly bar: Bar
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  /** Left edge of the first cell. */
  readonly left: number
  readonly cell: number
  readonly beatGap: number
}

/** Lays the cells. Parts of a cut share the room of the slots they replace. */
export function excerptGrid({ bar, fromTicks, toTicks, left, cell, beatGap }: ExcerptGridInput): ExcerptGrid {
  const slot = slotTicks(bar.grid)
  const shape = metreShape(bar.metre)
  const missing = bar.number === 0 ? shape.length - bar.length : 0
  const edges = shape.beats.map((beat) => beat - missing).filter((at) => at > fromTicks && at < toTicks)
  // Room before a tick, gaps included; `after` puts a tick on an edge behind its gap.
  const place = (at: Ticks, after: boolean): number =>
    left + ((at - fromTicks) / slot) * cell + edges.filter((edge) => (after ? edge <= at : edge < at)).length * beatGap
  const columns: ExcerptColumn[] = []
  let at = fromTicks
  while (at < toTicks) {
    const group = bar.groups.find((candidate) => candidate.at <= at && at < candidate.at + candidate.length)
    const next = bar.groups.find((candidate) => candidate.at > at)?.at ?? toTicks
    const ticks = group === undefined ? Math.min(slot, next - at) : group.length / group.parts
    const [a, b] = [place(at, true), place(at + ticks, false)]
    columns.push({ at, ticks, x: (a + b) / 2, cell: b - a })
    at += ticks
  }
  return {
    columns,
    left,
    right: place(toTicks, false),
    xAt: (tick) => {
      const column = columns.findLast((candidate) => candidate.at <= tick) ?? columns[0]
      if (column === undefined) return left
      return column.x + ((tick - column.at) / column.ticks) * column.cell
    },
  }
}
