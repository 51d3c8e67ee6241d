import type { Report } from '../finding/finding-draft.ts'
import type { LineIndex } from '../source/line-index.ts'
import type { SourceFile, Span } from '../source/span.ts'

const DASHES = /^---[ \t]*$/
const NOT_DASHES = 'the settings stand between two lines of just three dashes'

/** What a word processor, or a hand in a hurry, makes of three dashes. */
const NEAR_DASHES =
  /^(?:-{2}|-{4,}|[\u2013\u2014\u2212-]*[\u2013\u2014\u2212][\u2013\u2014\u2212-]*|- - -|_{3,}|={3,}|\*{3}|\.{3})[ \t]*$/

/** Where the settings of a file stand. */
export interface SettingsBlock {
  /** The opening dashes. */
  readonly opening: Span
  /** Offsets of the lines between the dashes. */
  readonly start: number
  readonly end: number
  /** The line of the file after the closing dashes, from 1. */
  readonly bodyLine: number
}

/**
 * Finds the settings at the top of a file, also where an empty line stands above them, their dashes are not quite right, or the
 * last ones are missing; all of that is reported. Null when the file does not begin with settings at all, which is reported.
 */
export function findSettingsBlock(
  source: SourceFile,
  index: LineIndex,
  options: { readonly report: Report; readonly what: string },
): SettingsBlock | null {
  const bom = source.text.startsWith('\uFEFF') ? 1 : 0
  const lines = linesOf(source.text, index, bom)
  let first = 1
  while (first < index.lineCount && lines.text(first).trim() === '') first++
  const tell = (line: number, message: string, help: string): void =>
    options.report({ code: 'front-matter-missing', span: lines.span(line), message, help })
  const misspelt = NEAR_DASHES.test(lines.text(first))
  const begins = misspelt || DASHES.test(lines.text(first))
  // A rule lower down, or one of other dashes, is no beginning unless a setting follows.
  if (!begins || ((misspelt || first > 1) && !lines.isSetting(first + 1))) return withoutSettings(tell, options.what)
  if (misspelt) tell(first, NOT_DASHES, 'write `---`')
  else if (first > 1) tell(1, 'an empty line stands above the settings', 'delete it: the file begins with `---`')
  const opening = lines.span(first)
  const start = first < index.lineCount ? index.lineSpan(first + 1).start : source.text.length
  const closing = findClosing(first + 1, lines)
  if (closing !== null) {
    if (closing.misspelt) tell(closing.line, NOT_DASHES, 'write `---`')
    return { opening, start, end: index.lineSpan(closing.line).start, bodyLine: closing.line + 1 }
  }
  let line = first + 1
  while (line < index.lineCount && lines.isSetting(line)) line++
  const last = line > first + 1 ? lines.text(line - 1).trim() : ''
  const below = last === '' || last.length > 40 ? 'the last setting' : `\`${last}\``
  tell(first, 'the settings are not closed', `put a line of three dashes \`---\` below ${below}`)
  return { opening, start: Math.min(start, source.text.length), end: index.lineSpan(line).start, bodyLine: line }
}

type Tell = (line: number, message: string, help: string) => void

function withoutSettings(tell: Tell, what: string): null {
  tell(1, `the ${what} does not start with its settings`, 'put `---`, `title: ...` and `---` on the first three lines')
  return null
}

interface Lines {
  readonly count: number
  /** The line without the byte order mark before it. */
  text(line: number): string
  /** From its first character to its last that is no space. */
  span(line: number): Span
  isSetting(line: number): boolean
}

function linesOf(text: string, index: LineIndex, bom: number): Lines {
  const startOf = (line: number): number => Math.min(index.lineSpan(line).start + (line === 1 ? bom : 0), text.length)
  const textOf = (line: number): string => text.slice(startOf(line), index.lineSpan(line).end)
  return {
    count: index.lineCount,
    text: textOf,
    span: (line) => ({ start: startOf(line), end: startOf(line) + textOf(line).trimEnd().length }),
    isSetting: (line) => line <= index.lineCount && /^\s*[A-Za-z-]+\s*:/.test(textOf(line)),
  }
}

/** The line that closes the settings; one that is only nearly three dashes when nothing but settings stands above it. */
function findClosing(from: number, lines: Lines): { readonly line: number; readonly misspelt: boolean } | null {
  let near: number | null = null
  let onlySettings = true
  for (let line = from; line <= lines.count; line++) {
    const text = lines.text(line)
    if (DASHES.test(text)) return { line: near ?? line, misspelt: near !== null }
    if (near === null && line > from && onlySettings && NEAR_DASHES.test(text)) near = line
    onlySettings &&= text.trim() === '' || lines.isSetting(line) || /^(?:\s|#|-\s)/.test(text)
  }
  return near === null ? null : { line: near, misspelt: true }
}
