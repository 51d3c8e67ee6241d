import type { SourceLine } from '../source/source-line.ts'

const FENCE = /^(`{3,}|~{3,})[^`]*$/

/** The lines inside a code fence that stands around all of them; the lines as they are when there is none. */
export function stripFence(lines: readonly SourceLine[]): readonly SourceLine[] {
  const first = lines.findIndex((line) => line.text.trim() !== '')
  const last = lines.findLastIndex((line) => line.text.trim() !== '')
  const open = FENCE.exec(lines[first]?.text.trim() ?? '')?.[1]
  const close = lines[last]?.text.trim() ?? ''
  const fits = open !== undefined && last > first && close.startsWith(open) && /^(`+|~+)$/.test(close)
  return fits ? lines.slice(first + 1, last) : lines
}

/** The line without its comment (`//` at its start or after a space) and without spaces at its end. */
export function withoutComment(line: SourceLine): SourceLine {
  const at = commentStart(line.text)
  const text = at < 0 ? line.text : line.text.slice(0, at)
  return { text: text.trimEnd(), offset: line.offset }
}

/** Where the comment of a line starts, -1 without one. */
function commentStart(text: string): number {
  return /(?:^|\s)\/\//.exec(text)?.index ?? -1
}
