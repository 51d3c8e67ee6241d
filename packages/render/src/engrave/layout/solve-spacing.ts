import type { Piece } from './piece.ts'

/** Where a piece and its columns stand in a system, in staff spaces from the system's left edge. */
export interface PlacedPiece {
  readonly piece: Piece
  readonly x: number
  readonly end: number
  /** Centre of each column. */
  readonly xs: readonly number[]
}

/** Two columns of the system that must stand at least so far apart, counted through all its pieces. */
interface SpanRod {
  readonly from: number
  readonly to: number
  readonly least: number
}

/** Room between two chord symbols. */
const CHORD_GAP = 0.9

/**
 * Places the columns of a system: every gap is its spring times one factor for the whole system, but never less than its rod, so that equal values look
 * equal. The factor is found by bisection to fill `width` from `start`, or is 1 when `width` is null (natural width).
 */
export function solveSpacing(pieces: readonly Piece[], start: number, width: number | null): readonly PlacedPiece[] {
  const gaps = pieces.flatMap((piece) => piece.gaps)
  const rods = gaps.map((gap) => gap.rod)
  const leads = pieces.reduce((sum, piece) => sum + piece.lead, 0)
  const spans = chordRods(pieces)
  let sizes: readonly number[] = []
  for (let round = 0; round < 8; round += 1) {
    const factor = width === null ? 1 : factorFor(gaps, rods, width - start - leads)
    sizes = gaps.map((gap, i) => Math.max(rods[i] ?? 0, factor * gap.spring))
    if (!widenRods(rods, sizes, spans, pieces)) break
  }
  if (width !== null) sizes = fitExactly(sizes, rods, width - start - leads)
  return place(pieces, start, sizes)
}

/** The smallest factor at which the gaps fill the room; 0 when the rods alone do. */
export function factorFor(gaps: readonly { readonly spring: number }[], rods: readonly number[], room: number): number {
  const total = (factor: number): number =>
    gaps.reduce((sum, gap, i) => sum + Math.max(rods[i] ?? 0, factor * gap.spring), 0)
  let [low, high] = [0, 64]
  for (let i = 0; i < 48; i += 1) {
    const middle = (low + high) / 2
    if (total(middle) < room) low = middle
    else high = middle
  }
  return high
}

/** Squeezes or stretches what bisection leaves over, so that systems end flush to the last digit. */
function fitExactly(sizes: readonly number[], rods: readonly number[], room: number): readonly number[] {
  const total = sizes.reduce((sum, size) => sum + size, 0)
  const slack = sizes.reduce((sum, size, i) => sum + Math.max(0, size - (rods[i] ?? 0)), 0)
  const over = total - room
  if (Math.abs(over) < 1e-9) return sizes
  if (slack > Math.max(1e-6, over))
    return sizes.map((size, i) => size - (over * Math.max(0, size - (rods[i] ?? 0))) / slack)
  return sizes.map((size) => (size * room) / total)
}

function chordRods(pieces: readonly Piece[]): readonly SpanRod[] {
  const symbols: { column: number; width: number }[] = []
  let first = 0
  for (const piece of pieces) {
    for (const { column, width } of piece.chords) symbols.push({ column: first + column, width })
    first += piece.built.columns.length
  }
  return symbols.map(({ column, width }, i) => ({
    from: column,
    to: symbols[i + 1]?.column ?? first,
    least: width + CHORD_GAP,
  }))
}

function widenRods(
  rods: number[],
  sizes: readonly number[],
  spans: readonly SpanRod[],
  pieces: readonly Piece[],
): boolean {
  const starts = new Map<number, number>()
  let first = 0
  for (const piece of pieces) {
    starts.set(first, piece.lead)
    first += piece.built.columns.length
  }
  let changed = false
  for (const { from, to, least } of spans) {
    let distance = 0
    for (let i = from; i < to; i += 1) distance += (sizes[i] ?? 0) + (i > from ? (starts.get(i) ?? 0) : 0)
    if (to < first) distance += starts.get(to) ?? 0
    const short = least - distance
    if (short < 1e-6 || to <= from) continue
    for (let i = from; i < to; i += 1) rods[i] = (sizes[i] ?? 0) + short / (to - from)
    changed = true
  }
  return changed
}

function place(pieces: readonly Piece[], start: number, sizes: readonly number[]): readonly PlacedPiece[] {
  let x = start
  let index = 0
  return pieces.map((piece) => {
    const left = x
    x += piece.lead
    const xs = piece.gaps.map(() => {
      const centre = x
      x += sizes[index] ?? 0
      index += 1
      return centre
    })
    return { piece, x: left, end: x, xs }
  })
}
