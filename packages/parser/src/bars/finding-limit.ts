import type { FindingDraft, Report } from '../finding/finding-draft.ts'

/** The most findings of one block. */
export const MOST_FINDINGS = 200

/** Collects the findings of a block and hands them on in the order of the source, at most so many, with one that says so. */
export function createFindingLimit(): { readonly report: Report; passOn(to: Report): void } {
  const drafts: FindingDraft[] = []
  return {
    report: (draft) => {
      drafts.push(draft)
    },
    passOn(to) {
      drafts.sort((a, b) => a.span.start - b.span.start)
      for (const draft of drafts.slice(0, MOST_FINDINGS)) to(draft)
      const next = drafts[MOST_FINDINGS]
      if (next === undefined) return
      const message = `more than ${MOST_FINDINGS} findings in this part: the rest is left out`
      to({ code: 'too-many-findings', span: next.span, message, help: 'mend those above first' })
    },
  }
}
