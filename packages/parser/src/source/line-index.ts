import type { Point, Span } from './span.ts'

/** Finds lines and columns of offsets in one text. Lines end with `\n`, `\r\n` or a lone `\r`, as in Markdown. */
export interface LineIndex {
  /** How many lines the text has; an empty text has one. */
  readonly lineCount: number
  /** The line and column of an offset; offsets outside the text are moved to its nearest end. */
  pointAt(offset: number): Point
  /** The span of a line (from 1) without its line ending; lines outside the text are moved to its nearest end. */
  lineSpan(line: number): Span
}

/**
 * Builds the index in one pass over the text; each look-up is a binary search.
 *
 * @example createLineIndex('a\r\nbc').pointAt(4) // { line: 2, column: 2, offset: 4 }
 */
export function createLineIndex(text: string): LineIndex {
  const starts = lineStarts(text)
  const lineOf = (offset: number): number => {
    let low = 0
    let high = starts.length - 1
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if ((starts[middle] ?? 0) <= offset) low = middle
      else high = middle - 1
    }
    return low
  }
  return {
    lineCount: starts.length,
    pointAt(offset) {
      const inside = Math.min(Math.max(0, offset), text.length)
      const line = lineOf(inside)
      return { line: line + 1, column: inside - (starts[line] ?? 0) + 1, offset: inside }
    },
    lineSpan(line) {
      const index = Math.min(Math.max(1, line), starts.length) - 1
      const start = starts[index] ?? 0
      return { start, end: endOfLine(text, start, starts[index + 1] ?? text.length) }
    },
  }
}

function lineStarts(text: string): readonly number[] {
  const starts = [0]
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at)
    if (unit === 10 || (unit === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1)
  }
  return starts
}

function endOfLine(text: string, start: number, next: number): number {
  let end = next
  while (end > start && (text.charCodeAt(end - 1) === 10 || text.charCodeAt(end - 1) === 13)) end--
  return end
}
