import type { Finding } from '@barwise/parser'

/** A finding as other programs read it: its keys in one fixed order. Lines and columns from 1, columns in UTF-16 units, end exclusive. */
export interface FindingRecord {
  readonly code: string
  readonly severity: string
  readonly message: string
  readonly help: string
  readonly file: string
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
}

/** All findings as one JSON array, an object a line. Ends with a line break. */
export function findingsJson(findings: readonly Finding[]): string {
  if (findings.length === 0) return '[]\n'
  return `[\n${findings.map((finding) => `  ${JSON.stringify(recordOf(finding))}`).join(',\n')}\n]\n`
}

function recordOf({ code, severity, message, help, place }: Finding): FindingRecord {
  const { file, line, column, endLine, endColumn } = place
  return { code, severity, message, help, file, line, column, endLine, endColumn }
}
