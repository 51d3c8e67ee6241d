import type { Lesson, Part, Ticks } from '@barwise/parser'
import type { FontSet } from '../fonts/font-set.ts'
import { type DrawnSystem, drawSystem } from './draw/draw-system.ts'
import type { Column } from './layout/column.ts'
import { type ExcerptColumn, excerptGrid } from './layout/excerpt-columns.ts'
import { buildPiece, type Piece, type SystemHead, systemHead } from './layout/piece.ts'
import { barContents } from './rhythm/write-rhythm.ts'
import { cardEngraveStyle, type EngraveStyle } from './style.ts'

/** An excerpt of one bar for a card, in points. */
export interface EngravedExcerpt extends DrawnSystem {
  /** One for each slot of the grid, or part of a cut, in order; `x` is the centre of note, figure, count and block. */
  readonly slots: readonly ExcerptColumn[]
  /** The least width of a cell at which nothing in it would touch its neighbour. */
  readonly leastCellPt: number
}

export interface EngraveExcerptInput {
  readonly lesson: Lesson
  readonly part: Part
  readonly fonts: FontSet
  /** The number of the bar; 0 is a pickup. */
  readonly bar: number
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  readonly staffSpacePt: number
  /** Width of a slot's cell, and the room between felt beats. */
  readonly cellPt: number
  readonly beatGapPt: number
  /** No text is set smaller, in points: for large print. */
  readonly minTextPt?: number
}

/** An excerpt whose music is set, but not yet how wide its cells are. */
export interface PreparedExcerpt {
  /** What there is to know of cells so wide before anything is drawn, in points: the cell of each slot, and the least width of a cell. */
  cells(cellPt: number): { readonly widthsPt: readonly number[]; readonly leastCellPt: number }
  engrave(cellPt: number): EngravedExcerpt
}

/**
 * Engraves a stretch of one bar with one x for each slot, all cells equally wide. A chord held in at its start is drawn in brackets in both
 * staves; where the music is cut there is no bar line, and what sounds on shows half a tie. Throws when the part has no such bar (our bug:
 * references are checked).
 */
export function engraveExcerpt(input: EngraveExcerptInput): EngravedExcerpt {
  return prepareExcerpt(input).engrave(input.cellPt)
}

/** The first half of `engraveExcerpt`, for who has yet to find the width of the cells. */
export function prepareExcerpt(input: Omit<EngraveExcerptInput, 'cellPt'>): PreparedExcerpt {
  const { lesson, part, fonts, staffSpacePt, fromTicks, toTicks } = input
  const style = cardEngraveStyle(staffSpacePt, input.minTextPt ?? 0)
  const contents = barContents(part.bars, part.repeats)
  const index = part.bars.findIndex((bar) => bar.number === input.bar)
  const content = contents[index]
  if (content === undefined) throw new Error(`part ${part.id} has no bar ${input.bar}`)
  const stretch = { content, from: fromTicks, to: toTicks, opens: true, excerpt: true }
  const built = buildPiece({
    part,
    stretch,
    instrument: lesson.instrument,
    style,
    fonts,
    before: null,
    after: part.bars[index + 1] ?? null,
  })
  const piece: Piece = { ...built, opening: 'none', closing: built.closing === 'none' ? 'none' : 'single' }
  const head = systemHead(content.bar, false, lesson.instrument, fonts)
  const following = toTicks >= content.bar.length ? contents[index + 1] : content
  const next =
    following === undefined ? null : nextColumn(input, following, toTicks >= content.bar.length ? 0 : toTicks, style)
  const spaced = (cellPt: number): SpacedExcerpt => {
    const cell = cellPt / staffSpacePt
    const grid = excerptGrid({
      bar: content.bar,
      fromTicks,
      toTicks,
      left: head.width + Math.max(0.35, (piece.built.columns[0]?.left ?? 0) + 0.5 - cell / 2),
      cell,
      beatGap: input.beatGapPt / staffSpacePt,
    })
    const xs = piece.built.columns.map((column) => grid.xAt(column.written.at))
    return { grid, xs, leastCellPt: leastCell(piece, xs, cell) * staffSpacePt }
  }
  const drawn = new Map<number, EngravedExcerpt>()
  return {
    cells: (cellPt) => {
      const { grid, leastCellPt } = spaced(cellPt)
      return { widthsPt: grid.columns.map((column) => column.cell * staffSpacePt), leastCellPt }
    },
    engrave: (cellPt) => {
      const excerpt = drawn.get(cellPt) ?? drawExcerpt({ piece, head, next, style, spaced: spaced(cellPt) }, input)
      drawn.set(cellPt, excerpt)
      return excerpt
    },
  }
}

/** Where the columns of an excerpt stand, in staff spaces. */
interface SpacedExcerpt {
  readonly grid: ReturnType<typeof excerptGrid>
  readonly xs: readonly number[]
  readonly leastCellPt: number
}

interface ExcerptPlan {
  readonly piece: Piece
  readonly head: SystemHead
  readonly next: Column | null
  readonly style: EngraveStyle
  readonly spaced: SpacedExcerpt
}

function drawExcerpt(
  { piece, head, next, style, spaced: { grid, xs, leastCellPt } }: ExcerptPlan,
  { lesson, part, fonts, staffSpacePt }: Omit<EngraveExcerptInput, 'cellPt'>,
): EngravedExcerpt {
  const reach = (xs.at(-1) ?? 0) + (piece.built.columns.at(-1)?.right ?? 0)
  const end = Math.max(grid.right + 0.6, reach + 0.45)
  const system = drawSystem(
    {
      part: { ...part, repeats: [] },
      instrument: lesson.instrument,
      style,
      fonts,
      pieces: [{ piece, x: head.width, end, xs }],
      head,
      courtesy: [],
      width: end,
      next,
    },
    { above: { firstTempo: false, barNumber: false, sections: false }, below: { strokes: false, counts: false } },
  )
  const slots = grid.columns.map((column) => ({
    ...column,
    x: column.x * staffSpacePt + system.staffLeft,
    cell: column.cell * staffSpacePt,
  }))
  return { ...system, slots, leastCellPt }
}

function nextColumn(
  { lesson, part, fonts }: Omit<EngraveExcerptInput, 'cellPt'>,
  content: ReturnType<typeof barContents>[number],
  from: Ticks,
  style: EngraveStyle,
): Column | null {
  const stretch = { content, from, to: content.bar.length, opens: false, excerpt: false }
  const piece = buildPiece({ part, stretch, instrument: lesson.instrument, style, fonts, before: null, after: null })
  return piece.built.columns[0] ?? null
}

/** The cell at which the tightest pair of neighbours just has its room; the ink alone counts, not the rule for running text. */
function leastCell(piece: Piece, xs: readonly number[], cell: number): number {
  let least = 0
  const { columns } = piece.built
  columns.forEach((column, i) => {
    const next = columns[i + 1]
    const [x, x2] = [xs[i], xs[i + 1]]
    if (next === undefined || x === undefined || x2 === undefined || x2 <= x) return
    least = Math.max(least, ((column.right + next.left + 0.2) * cell) / (x2 - x))
  })
  return least
}
