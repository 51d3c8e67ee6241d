import type { Finding } from '@barwise/parser'
import type { Output } from '../terminal/world.ts'
import { findingsJson } from './finding-json.ts'
import { findingLine } from './finding-line.ts'
import { findingText, type SourceTexts } from './finding-text.ts'
import { counted, countOf, summaryOf } from './summary.ts'

/** How findings are printed: with excerpts for people, a line each, or as one JSON array. */
export const FINDING_FORMATS = ['text', 'lines', 'json'] as const

export type FindingFormat = (typeof FINDING_FORMATS)[number]

/** What is to be reported, and how. */
export interface FindingReport {
  readonly findings: readonly Finding[]
  readonly sources: SourceTexts
  readonly lessons: number
  readonly format: FindingFormat
  /** Whether notes are shown to people. JSON always holds them, as the lesson's own JSON does. */
  readonly notes: boolean
}

/** Prints the findings in the order given; the text form ends with the summary. */
export function reportFindings(report: FindingReport, output: Output): void {
  const shown = report.findings.filter((finding) => report.notes || finding.severity !== 'note')
  switch (report.format) {
    case 'json':
      output.write(findingsJson(report.findings))
      return
    case 'lines':
      output.write(shown.map(findingLine).join(''))
      return
    case 'text':
      output.write(shown.map((finding) => `${findingText(finding, report.sources, output)}\n`).join(''))
      output.write(`${summaryLine(report, shown, output)}\n`)
  }
}

function summaryLine(report: FindingReport, shown: readonly Finding[], output: Output): string {
  const hidden = report.findings.length - shown.length
  const summary = output.paint(countOf(shown, 'error') > 0 ? 'red' : 'bold', summaryOf(shown, report.lessons))
  return hidden === 0 ? summary : `${summary} (${counted(hidden, 'note')} more with \`--notes\`)`
}
