import type { Finding, Severity } from '@barwise/parser'
import type { Output, Style } from '../terminal/world.ts'
import { excerptOf } from './excerpt.ts'
import { wrapWords } from './wrap-words.ts'

const STYLE: Readonly<Record<Severity, Style>> = { error: 'red', warning: 'yellow', note: 'cyan' }

/** The texts that findings point into, by the file name they carry. */
export type SourceTexts = ReadonlyMap<string, string>

/**
 * A finding for people: what, where, the line with carets, the help. Ends with a line break.
 *
 * @example
 * error[wrong-slot-count] beat 2 has 3 signs, a sixteenth grid needs 4
 *   lessons/ferry-queue.md:23:6
 *    23 |   2: x Em7 x
 *       |      ^^^^^^^
 *   help: add one sign (`-` holds, `.` is silence), or write `2 in 3:` for a triplet
 */
export function findingText(finding: Finding, sources: SourceTexts, output: Output): string {
  const style = STYLE[finding.severity]
  const { file, line, column } = finding.place
  const name = `${finding.severity}[${finding.code}]`
  const message = wrapped(finding.message, { before: `${name} `, indent: '  ', output })
  const lines = [`${output.paint(style, name)} ${message.map((one) => output.paint('bold', one)).join('\n  ')}`]
  lines.push(`  ${file}:${line}:${column}`)
  lines.push(...excerptLines(finding, sources, output))
  for (const other of finding.related) {
    lines.push(`  see ${other.place.file}:${other.place.line}:${other.place.column} ${other.message}`)
  }
  const indent = '        '
  const help = wrapped(finding.help, { before: indent, indent, output })
  lines.push(`  ${output.paint('green', 'help:')} ${help.join(`\n${indent}`)}`)
  return `${lines.join('\n')}\n`
}

/** A message as it fits a terminal; in one line where nobody watches, so that it can be searched. */
function wrapped(
  text: string,
  { before, indent, output }: { readonly before: string; readonly indent: string; readonly output: Output },
): readonly string[] {
  if (!output.isTerminal) return [text]
  return wrapWords(text, {
    columns: Math.max(30, output.columns) - indent.length,
    first: before.length - indent.length,
  })
}

function excerptLines(finding: Finding, sources: SourceTexts, output: Output): readonly string[] {
  const text = sources.get(finding.place.file)
  const excerpt = text === undefined ? null : excerptOf(text, finding.place, output.columns)
  if (excerpt === null) return []
  const bar = output.paint('dim', '|')
  return [
    `${output.paint('dim', excerpt.number)} ${bar} ${excerpt.line}`.trimEnd(),
    `${' '.repeat(excerpt.number.length)} ${bar} ${output.paint(STYLE[finding.severity], excerpt.carets)}`,
  ]
}
