import type { Place } from '@barwise/parser'
import { type Cell, cellsOf } from './cells.ts'

/** The line a finding points at, with carets under the characters it covers. */
export interface Excerpt {
  /** The line's number in the gutter's width, as in `   23`. */
  readonly number: string
  /** The line as shown, cut to the columns there are. */
  readonly line: string
  /** Spaces, then carets. */
  readonly carets: string
}

const GUTTER_COLUMNS = 5
const CUT_MARK = '…'

/**
 * The excerpt for a place in a text, at most `columns` wide; null when the text has no such line.
 * A place that goes on over several lines is shown on its first; an empty one gets one caret.
 */
export function excerptOf(text: string, place: Place, columns: number): Excerpt | null {
  const line = text.split(/\r\n|\n|\r/)[place.line - 1]
  if (line === undefined) return null
  const number = String(place.line).padStart(GUTTER_COLUMNS)
  const cells = cellsOf(line)
  const from = place.column - 1
  const to = place.endLine > place.line ? line.trimEnd().length : place.endColumn - 1
  const marked = markedCells(cells, from, to)
  const window = windowAround(cells, marked.first, Math.max(20, columns - number.length - ' | '.length))
  return { number, ...drawn(cells, marked, window) }
}

interface Stretch {
  readonly first: number
  /** One past the last; equal to `first` when nothing is covered. */
  readonly end: number
}

function markedCells(cells: readonly Cell[], from: number, to: number): Stretch {
  const found = cells.findIndex((cell) => cell.end > from)
  const first = found < 0 ? cells.length : found
  let end = first
  while (end < cells.length && (cells[end]?.start ?? 0) < to) end++
  return { first, end }
}

/** The cells that fit: the whole line where there is room, else a stretch that begins a third before what is marked. */
function windowAround(cells: readonly Cell[], marked: number, columns: number): Stretch {
  if (widthOf(cells) <= columns) return { first: 0, end: cells.length }
  const room = columns - 2 * CUT_MARK.length
  let first = marked
  let before = 0
  while (first > 0 && before + (cells[first - 1]?.width ?? 0) <= room / 3) before += cells[--first]?.width ?? 0
  let end = first
  let used = 0
  while (end < cells.length && used + (cells[end]?.width ?? 0) <= room) used += cells[end++]?.width ?? 0
  return { first, end }
}

function drawn(cells: readonly Cell[], marked: Stretch, window: Stretch): { line: string; carets: string } {
  const cutBefore = window.first > 0 ? CUT_MARK : ''
  const cutAfter = window.end < cells.length ? CUT_MARK : ''
  const shown = cells.slice(window.first, window.end)
  const spaces = cutBefore.length + widthOf(cells.slice(window.first, marked.first))
  const carets = widthOf(cells.slice(marked.first, Math.min(marked.end, window.end)))
  return {
    line: `${cutBefore}${shown.map((cell) => cell.text).join('')}${cutAfter}`,
    carets: `${' '.repeat(spaces)}${'^'.repeat(Math.max(1, carets))}`,
  }
}

function widthOf(cells: readonly Cell[]): number {
  return cells.reduce((sum, cell) => sum + cell.width, 0)
}
