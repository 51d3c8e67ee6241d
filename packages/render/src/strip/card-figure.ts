import type { Bar, Lesson, Part, Ticks } from '@barwise/parser'
import type { Drawing } from '../drawing/drawing.ts'
import { pointsOf } from '../drawing/lengths.ts'
import { mergeDrawings, scaleDrawing } from '../drawing/place.ts'
import { type EngravedExcerpt, type PreparedExcerpt, prepareExcerpt } from '../engrave/engrave-excerpt.ts'
import type { FontSet } from '../fonts/font-set.ts'
import { type DrawnStrip, drawStrip } from './draw-strip.ts'
import type { StripCell } from './strip-cells.ts'
import { stripStyle } from './strip-style.ts'

export interface DrawCardFigureInput {
  readonly lesson: Lesson
  readonly part: Part
  readonly fonts: FontSet
  /** The number of the bar; 0 is a pickup. */
  readonly bar: number
  readonly fromTicks: Ticks
  readonly toTicks: Ticks
  /** 4.25 (1.5 mm) by default; 7.1 (2.5 mm) in large print. */
  readonly staffSpacePt?: number
  /** No text is set smaller: 14 for large print. */
  readonly minTextPt?: number
  /** Cells grow no further than makes the figure this wide. */
  readonly maxWidthPt?: number
  /** The figure is never wider than this: cells shrink as far as their content lets them, then all of it is set smaller. */
  readonly pageWidthPt?: number
}

/** Staff, tab, count and strip of a stretch of a bar in the same columns, with what the strip shows (for its legend). */
export interface CardFigure {
  readonly drawing: Drawing
  readonly excerpt: EngravedExcerpt
  readonly strip: DrawnStrip
  readonly cells: readonly StripCell[]
  /** How much smaller than asked for the whole is set to fit the page; 1 unless it must. Excerpt and strip are told at full size. */
  readonly scale: number
  /** How many times wider its cells would have to be for all in them to have its room; 1 and less where all has. */
  readonly crowded: number
  /** Left edge of the first cell and right edge of the last, in the drawing. */
  readonly left: number
  readonly right: number
}

/** Cells, and the parts of a cut, grow to hold what is crowded in them, but no further than this many times the size of a cell. */
const WIDEST = 1.5
/** Cells shrink no further than to this share: blocks stay wide enough for their words. */
const NARROWEST = 0.75

/**
 * Draws the figure of a card: the excerpt and under it the strum strip, one x for each slot. Where neighbours in the staff need more room than the
 * cells give, all cells of the figure grow; where the page is too narrow, they shrink. Throws when the part has no such bar (our bug: references are checked).
 */
export function drawCardFigure(input: DrawCardFigureInput): CardFigure {
  const { part, fonts } = input
  const bar = barOf(part, input.bar)
  const minTextPt = input.minTextPt ?? 0
  const base = stripStyle(minTextPt)
  const prepared = prepareExcerpt({
    ...input,
    staffSpacePt: input.staffSpacePt ?? pointsOf(minTextPt >= 12 ? 2.5 : 1.5),
    beatGapPt: base.beatGap,
    minTextPt,
  })
  const cell = cellFor(prepared, base.cell, input)
  const excerpt = prepared.engrave(cell)
  const strip = drawStrip({
    part,
    bar,
    fonts,
    fromTicks: input.fromTicks,
    toTicks: input.toTicks,
    style: { ...base, cell },
    columns: excerpt.slots,
    palmMuting: false,
  })
  const stripTop = Math.max(excerpt.drawing.height, excerpt.tabBottom) + base.lead
  const drawing = mergeDrawings([
    { drawing: excerpt.drawing, x: 0, y: 0 },
    { drawing: strip.drawing, x: 0, y: stripTop },
  ])
  const [first, last] = [excerpt.slots[0], excerpt.slots.at(-1)]
  const left = first === undefined ? 0 : first.x - first.cell / 2
  const right = last === undefined ? drawing.width : last.x + last.cell / 2
  const ratio = (input.pageWidthPt ?? Infinity) / drawing.width
  // A cell fitted to the page may miss it by a rounding error.
  const scale = ratio > 1 - 1e-9 ? 1 : ratio
  return {
    drawing: inBar(scale === 1 ? drawing : scaleDrawing(drawing, scale), bar.number),
    excerpt,
    strip,
    cells: strip.cells,
    scale,
    crowded: excerpt.leastCellPt / cell,
    left: left * scale,
    right: right * scale,
  }
}

/** The cell a figure is drawn with: wider than usual for crowded accidentals, narrower for a bar wider than the page. */
function cellFor(excerpt: PreparedExcerpt, cell: number, { maxWidthPt, pageWidthPt }: DrawCardFigureInput): number {
  const { widthsPt, leastCellPt } = excerpt.cells(cell)
  const cells = widthsPt.reduce((sum, width) => sum + width, 0)
  // Parts of a cut are as wide as other cells where there is room: their counts and notes are no smaller.
  const evened = (cell * cell) / Math.min(cell, ...widthsPt)
  const wanted = Math.max(Math.min(Math.max(cell, evened), cell * WIDEST), Math.min(leastCellPt, evened * WIDEST))
  if (pageWidthPt === undefined && (maxWidthPt === undefined || wanted === cell)) return wanted
  // What stands beside the cells is known only from the drawing.
  const beside = excerpt.engrave(cell).drawing.width - cells
  const cellAt = (widthPt: number): number => (cell * (widthPt - beside)) / cells
  const fitted = cellAt(pageWidthPt ?? Infinity)
  if (fitted < cell) return Math.max(fitted, leastCellPt, cell * NARROWEST)
  return Math.max(cell, Math.min(wanted, cellAt(maxWidthPt ?? Infinity), fitted))
}

function inBar(drawing: Drawing, bar: number): Drawing {
  return { ...drawing, items: [{ kind: 'group', name: 'bar', bar, at: null, items: drawing.items }] }
}

function barOf(part: Part, number: number): Bar {
  const bar = part.bars.find((candidate) => candidate.number === number)
  if (bar === undefined) throw new Error(`part ${part.id} has no bar ${number}`)
  return bar
}
