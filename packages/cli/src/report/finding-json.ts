import type { Finding } from '@barwise/parser'
import { findingValue } from '@barwise/render'

/** All findings as one JSON array, an object a line: the same objects as in a lesson's own JSON. Ends with a line break. */
export function findingsJson(findings: readonly Finding[]): string {
  if (findings.length === 0) return '[]\n'
  return `[\n${findings.map((finding) => `  ${JSON.stringify(findingValue(finding))}`).join(',\n')}\n]\n`
}
