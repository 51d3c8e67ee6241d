import type { FindingDraft, Report } from '../finding/finding-draft.ts'

/** The most findings of one block. */
const MOST_FINDINGS = 200

/** The findings of a block on their way to the writer. */
export interface FindingLimit {
  readonly report: Report
  /** What has been reported so far, in that order. */
  readonly drafts: readonly FindingDraft[]
  passOn(to: Report): void
}

/**
 * Collects the findings of a block and hands them on in the order of the source, at most so many, with one that says so.
 * What is one mistake however often it is made (a shape that does not exist, a capital X, dashes before every line) is reported where it
 * stands first.
 */
export function createFindingLimit(): FindingLimit {
  const drafts: FindingDraft[] = []
  return {
    drafts,
    report: (draft) => {
      drafts.push(draft)
    },
    passOn(to) {
      const told = withNamesOnce(drafts.sort((a, b) => a.span.start - b.span.start))
      for (const draft of told.slice(0, MOST_FINDINGS)) to(draft)
      const next = told[MOST_FINDINGS]
      if (next === undefined) return
      const message = `more than ${MOST_FINDINGS} findings in this part: the rest is left out`
      to({ code: 'too-many-findings', span: next.span, message, help: 'mend those above first' })
    },
  }
}

const TOLD_ONCE: ReadonlySet<FindingDraft['code']> = new Set(['unknown-shape', 'capital-x', 'strange-character'])

function isToldOnce({ code, once }: FindingDraft): boolean {
  return once === true || TOLD_ONCE.has(code)
}

function withNamesOnce(drafts: readonly FindingDraft[]): readonly FindingDraft[] {
  const times = new Map<string, number>()
  for (const draft of drafts) {
    if (isToldOnce(draft)) times.set(draft.message, (times.get(draft.message) ?? 0) + 1)
  }
  return drafts.flatMap((draft) => {
    if (!isToldOnce(draft)) return [draft]
    const count = times.get(draft.message) ?? 0
    times.set(draft.message, 0)
    if (count === 0) return []
    if (count === 1) return [draft]
    const more = count === 2 ? 'once more' : `${count - 1} more times`
    return [{ ...draft, message: `${draft.message}, and ${more} below` }]
  })
}
