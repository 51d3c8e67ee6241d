import type { Finding, Severity } from '@barwise/parser'
import type { Output, Style } from '../terminal/world.ts'
import { excerptOf } from './excerpt.ts'

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
  const title = output.paint(style, `${finding.severity}[${finding.code}]`)
  const lines = [`${title} ${output.paint('bold', finding.message)}`, `  ${file}:${line}:${column}`]
  lines.push(...excerptLines(finding, sources, output))
  for (const other of finding.related) {
    lines.push(`  see ${other.place.file}:${other.place.line}:${other.place.column} ${other.message}`)
  }
  lines.push(`  ${output.paint('green', 'help:')} ${finding.help}`)
  return `${lines.join('\n')}\n`
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
