import type { FindingDraft, Report } from '../finding/finding-draft.ts'

/** Findings about the names of shapes on their way to the writer. */
export interface ShapeFindings {
  readonly report: Report
  /** Reports what was held back. */
  finish(): void
}

/**
 * Tells of each shape that does not exist once, in parts and words together. Where one shape has the name of another and one name
 * has no shape, a line was copied and its name left as it was: that is one mistake, at that line.
 *
 * @param text the lesson.
 */
export function createShapeFindings(text: string, report: Report): ShapeFindings {
  const missing = new Map<string, FindingDraft>()
  const twins: FindingDraft[] = []
  return {
    report: (draft) => {
      const name = text.slice(draft.span.start, draft.span.end)
      if (draft.code === 'duplicate-shape') twins.push(draft)
      else if (draft.code !== 'unknown-shape') report(draft)
      else if (!missing.has(name)) missing.set(name, draft)
    },
    finish: () => {
      const [twin] = twins
      const [name] = missing.keys()
      if (twins.length === 1 && missing.size === 1 && twin !== undefined) {
        const help = `name it \`${name}\`, which is played and has no shape, or give it another name`
        report({ ...twin, help })
        return
      }
      for (const draft of [...twins, ...missing.values()]) report(draft)
    },
  }
}
