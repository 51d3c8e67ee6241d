import type { Finding } from '@barwise/parser'

/** The findings in order, each once: a shared shape file is read for every lesson that uses it. */
export function uniqueFindings(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>()
  return findings.filter(({ code, place, message }) => {
    const key = JSON.stringify([code, place, message])
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}
