import type { Finding, Severity } from '@barwise/parser'

/**
 * How many findings there are, in one line without a line break; kinds that do not occur are left out.
 *
 * @example summaryOf(findings, 3) // '2 errors, 1 warning in 3 lessons'
 */
export function summaryOf(findings: readonly Finding[], lessons: number): string {
  const counts = (['error', 'warning', 'note'] as const)
    .map((severity) => counted(countOf(findings, severity), severity))
    .filter((part) => !part.startsWith('0 '))
  const where = lessons === 0 ? '' : ` in ${counted(lessons, 'lesson')}`
  return `${counts.length === 0 ? 'no findings' : counts.join(', ')}${where}`
}

/** How many findings have this severity. */
export function countOf(findings: readonly Finding[], severity: Severity): number {
  return findings.filter((finding) => finding.severity === severity).length
}

/** A number with its noun: `1 lesson`, `3 lessons`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}
