import { distance } from 'fastest-levenshtein'
import { nearestNames } from '../finding/nearest-names.ts'
import type { LineIndex } from '../source/line-index.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { Span } from '../source/span.ts'
import { BLOCK_NAMES, CONTAINERS, type RAW_NAMES } from './directive-names.ts'
import { stripFence, withoutComment } from './raw-lines.ts'

export type RawName = (typeof RAW_NAMES)[number]

/** A `shapes` or `part` block found line by line, before and without Markdown. */
export interface RawBlock {
  readonly name: RawName
  /** What is wrong with its first line, null when it is written as it should be. */
  readonly misspelt: string | null
  /** Whether it begins behind other text on its line. */
  readonly embedded: boolean
  /** Colons of its first line. */
  readonly colons: number
  readonly openLine: number
  /** The line of its closing colons, or the last line that belongs to a block that is never closed. */
  readonly lastLine: number
  readonly closed: boolean
  /** The closing line when it is not written as one (`::`, `::: end`), null otherwise. */
  readonly misspeltClose: Span | null
  /** The first line from its colons on. */
  readonly opening: Span
  /** What follows the name on the first line. */
  readonly rest: SourceLine
  readonly span: Span
  /** The lines inside without indentation, quote marks, comments, and a code fence around them all. */
  readonly lines: readonly SourceLine[]
  /** The same lines with their comments. */
  readonly commented: readonly SourceLine[]
}

/** What the lines of a file look like before Markdown is read. */
export interface RawScan {
  readonly blocks: readonly RawBlock[]
  /** Lines that begin with colons and belong to no raw block, by line number, from their colons on. */
  readonly colonLines: ReadonlyMap<number, SourceLine>
}

interface Opening {
  readonly name: RawName
  readonly colons: number
  readonly rest: string
  readonly misspelt: string | null
  readonly embedded: boolean
}

const CONTAINER_PREFIX = /^(?:[ \t]|>|[-*+][ \t]|\d{1,9}[.)][ \t])*/
const QUOTE_PREFIX = /^[ \t]*(?:>[ \t]*)*/
const PART_LINE = /^(?:pickup|bar|from|section|say|repeat|ending|or|\d[\d-]*(?:\s+in\s+\d+)?\s*:)(?:[\s:]|$)|^\d[^:]*:/
const EMBEDDED = /(?<=[^`:\w]):::(?:part[ \t]*\{[^`]*|shapes[ \t]*)$/
/** A line past this length is prose: nobody's part begins in it. */
const LONGEST_OPENING = 1000
/** Whether a line begins like a shape: a name and three frets. */
export const SHAPE_LINE: RegExp = /^[A-Za-z]\S*(?:\s+(?:\d+|[xX])){3}/

/**
 * Finds every raw block of a text in one pass, those that Markdown would not see (indented, in an open code fence)
 * and those with a misspelt first line included. A block that is never closed ends before the next line of colons, or
 * where after an empty line something stands that is no line of its kind.
 */
export function scanRawBlocks(text: string, index: LineIndex, firstLine: number): RawScan {
  const blocks: RawBlock[] = []
  const colonLines = new Map<number, SourceLine>()
  const lineAt = (line: number): SourceLine => {
    const span = index.lineSpan(line)
    return { text: text.slice(span.start, span.end), offset: span.start }
  }
  let line = firstLine
  while (line <= index.lineCount) {
    const start = stripPrefix(lineAt(line), CONTAINER_PREFIX)
    const at = /^[:\uff1a]/.test(start.text) ? 0 : embeddedAt(start.text)
    if (at < 0) {
      line++
      continue
    }
    const opening = readOpening(start.text.slice(at))
    if (opening !== null && at > 0) {
      const behind = { text: start.text.slice(at), offset: start.offset + at }
      const found = { opening: { ...opening, embedded: true }, start: behind, openLine: line }
      const block = readBlock({ ...found, lineAt, lineCount: index.lineCount })
      blocks.push(block)
      line = block.lastLine + 1
      continue
    }
    if (opening === null) {
      colonLines.set(line, start)
      line++
      continue
    }
    const block = readBlock({ opening, start, openLine: line, lineAt, lineCount: index.lineCount })
    blocks.push(block)
    line = block.lastLine + 1
  }
  return { blocks, colonLines }
}

/** The column at which a raw block seems to begin behind other text; -1 when none does. */
function embeddedAt(text: string): number {
  return text.length > LONGEST_OPENING ? -1 : text.search(EMBEDDED)
}

function readBlock(found: {
  readonly opening: Opening
  readonly start: SourceLine
  readonly openLine: number
  readonly lineAt: (line: number) => SourceLine
  readonly lineCount: number
}): RawBlock {
  const { opening, start, openLine, lineAt, lineCount } = found
  const closing = ':'.repeat(Math.max(3, opening.colons))
  const commented: SourceLine[] = []
  let line = openLine + 1
  let closed = false
  let misspeltClose: Span | null = null
  for (; line <= lineCount; line++) {
    const inside = stripPrefix(lineAt(line), QUOTE_PREFIX)
    if (/^[:\uff1a]{2}/.test(inside.text)) {
      const end = inside.text.trimEnd()
      const misspelt = end !== closing && isMisspeltClose(end)
      closed = end === closing || misspelt
      if (misspelt) misspeltClose = { start: inside.offset, end: inside.offset + end.length }
      if (closed || end.startsWith(':::')) break
    }
    commented.push(inside)
  }
  if (!closed) commented.length = openBlockLength(commented, opening.name)
  const lastLine = openLine + commented.length + (closed ? 1 : 0)
  const last = lineAt(lastLine)
  const kept = stripFence(commented)
  return {
    name: opening.name,
    misspelt: opening.misspelt,
    embedded: opening.embedded,
    colons: opening.colons,
    openLine,
    lastLine,
    closed,
    misspeltClose,
    opening: { start: start.offset, end: start.offset + start.text.trimEnd().length },
    rest: { text: opening.rest, offset: start.offset + start.text.length - opening.rest.length },
    span: { start: start.offset, end: last.offset + last.text.length },
    lines: kept.map(withoutComment),
    commented: kept,
  }
}

/** Two colons alone, three full-width ones, or three and a word that starts no block. */
function isMisspeltClose(text: string): boolean {
  if (text === '::' || (/^[:\uff1a]{3}$/.test(text) && text !== ':::')) return true
  const word = /^:::[ \t]*([A-Za-z]+)[ \t]*$/.exec(text)?.[1]
  return word !== undefined && nearestNames(word, BLOCK_NAMES).length === 0
}

/** How many lines an unclosed block takes: up to the first that cannot be its own after an empty one. */
function openBlockLength(lines: readonly SourceLine[], name: RawName): number {
  const own = name === 'part' ? PART_LINE : SHAPE_LINE
  let length = 0
  let afterBlank = false
  for (const [at, line] of lines.entries()) {
    const text = line.text.trim()
    if (text === '') {
      afterBlank = true
      continue
    }
    if (afterBlank && !text.startsWith('//') && !own.test(text)) break
    afterBlank = false
    length = at + 1
  }
  return length
}

function stripPrefix(line: SourceLine, prefix: RegExp): SourceLine {
  const length = prefix.exec(line.text)?.[0].length ?? 0
  return { text: line.text.slice(length), offset: line.offset + length }
}

function readOpening(text: string): Opening | null {
  const match = /^([:\uff1a]+)([ \t\u00a0]*)([A-Za-z]+)(?![A-Za-z0-9-])(.*)$/s.exec(text)
  if (match === null) return null
  const [, colons = '', gap = '', word = '', rest = ''] = match
  const name = nearRawName(word, rest)
  if (name === null) return null
  // One or two colons are another directive unless the word is exactly a raw block's and stands alone on the line.
  const alone = /^[ \t]*(?:\{.*)?$/s.test(rest)
  if (colons.length < 3 && (word !== name || gap !== '' || !alone)) return null
  if (word !== name && !alone) return null
  const misspelt = colons.includes('\uff1a')
    ? 'these colons are not the plain ones'
    : colons.length < 3
      ? `a ${name} block starts with three colons`
      : gap !== ''
        ? `there is a space before \`${word}\``
        : word !== name
          ? `\`${word}\` is no kind of block`
          : /^[ \t]+\{/.test(rest)
            ? `there is a space before the brace`
            : null
  return { name, colons: colons.length, rest, misspelt, embedded: false }
}

function nearRawName(word: string, rest: string): RawName | null {
  if (CONTAINERS.some((name) => name === word)) return null
  const lower = word.toLowerCase()
  const named = /^[ \t]*\{[ \t]*#/.test(rest)
  if (distance(lower, 'shapes') <= 2) return 'shapes'
  if (distance(lower, 'part') <= 1) return 'part'
  return named && distance(lower, 'part') <= 2 ? 'part' : null
}
