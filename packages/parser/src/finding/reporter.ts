import { createLineIndex, type LineIndex } from '../source/line-index.ts'
import type { SourceFile, Span } from '../source/span.ts'
import { CODE_DOCS } from './codes.ts'
import type { Finding, Place } from './finding.ts'
import type { FindingDraft, Report } from './finding-draft.ts'

/** Collects the findings of one file and turns their offsets into places. */
export interface Reporter {
  readonly report: Report
  /** All findings so far, in the order of the source; those at the same place stay in the order they were reported. */
  findings(): readonly Finding[]
}

/** A reporter for one file. Spans that reach outside the file are cut to it. */
export function createReporter(source: SourceFile): Reporter {
  const index = createLineIndex(source.text)
  const drafts: FindingDraft[] = []
  return {
    report: (draft) => {
      drafts.push(draft)
    },
    findings: () => drafts.map((draft) => placeFinding(draft, source.path, index)).sort(inSourceOrder),
  }
}

/** The finding that a draft states, placed in the file that `index` belongs to; its severity is that of its code unless it sets one. */
export function placeFinding(draft: FindingDraft, file: string, index: LineIndex): Finding {
  return {
    code: draft.code,
    severity: draft.severity ?? CODE_DOCS[draft.code].severity,
    message: draft.message,
    help: draft.help,
    place: placeOf(draft.span, file, index),
    span: cutSpan(draft.span, index),
    bar: draft.bar ?? null,
    related: (draft.related ?? []).map((other) => ({
      place: placeOf(other.span, file, index),
      message: other.message,
    })),
  }
}

/** Lines and columns of a span. */
export function placeOf(span: Span, file: string, index: LineIndex): Place {
  const start = index.pointAt(span.start)
  const end = index.pointAt(Math.max(span.start, span.end))
  return { file, line: start.line, column: start.column, endLine: end.line, endColumn: end.column }
}

function cutSpan(span: Span, index: LineIndex): Span {
  return { start: index.pointAt(span.start).offset, end: index.pointAt(Math.max(span.start, span.end)).offset }
}

/** Sorts findings of one file by where they begin. */
export function inSourceOrder(a: Finding, b: Finding): number {
  return a.place.line - b.place.line || a.place.column - b.place.column
}
