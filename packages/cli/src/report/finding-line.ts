import type { Finding } from '@barwise/parser'

/**
 * A finding in one line, for editors and scripts. Ends with a line break.
 *
 * @example 'ferry-queue.md:23:6: error[wrong-slot-count] beat 2 has 3 signs, a sixteenth grid needs 4\n'
 */
export function findingLine(finding: Finding): string {
  const { file, line, column } = finding.place
  return `${file}:${line}:${column}: ${finding.severity}[${finding.code}] ${finding.message}\n`
}
