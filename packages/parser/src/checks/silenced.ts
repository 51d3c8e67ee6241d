import type { Finding } from '../finding/finding.ts'
import type { LineIndex } from '../source/line-index.ts'
import type { SourceFile } from '../source/span.ts'

/** The comment that silences findings of the named codes on its own line: `// fine: stretch, change-tight`. */
const FINE = /(?:^|\s)\/\/\s*fine:\s*([a-z][a-z-]*(?:\s*,\s*[a-z][a-z-]*)*)/

/**
 * A test for findings of a colleague that the writer has answered: `// fine: code` on the line, or `accept` for the lesson.
 * Reading errors are never silenced; the caller asks only about the findings of rules.
 */
export function silencer(
  source: SourceFile,
  { index, accept }: { readonly index: LineIndex; readonly accept: readonly string[] },
): (finding: Finding) => boolean {
  const accepted = new Set(accept)
  return (finding) => accepted.has(finding.code) || fineOn(source, index, finding.place.line).includes(finding.code)
}

function fineOn(source: SourceFile, index: LineIndex, line: number): readonly string[] {
  const { start, end } = index.lineSpan(line)
  const codes = FINE.exec(source.text.slice(start, end))?.[1]
  return codes === undefined ? [] : codes.split(',').map((code) => code.trim())
}
