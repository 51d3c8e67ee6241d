import { breakLines, oneLine } from './break-lines.ts'
import { type Area, type LayoutContext, missingReporter } from './layout-context.ts'
import type { PageItem, StructNode, StructRole } from './page-content.ts'
import type { TextSize } from './page-style.ts'
import { type Row, row } from './row.ts'
import type { TextRun } from './text-run.ts'

/** How a paragraph is set. `indent` moves its first line right. */
export interface ParagraphSetting {
  readonly role: StructRole
  readonly size: TextSize
  readonly indent?: number
  /** False cuts no word that a line holds. */
  readonly hyphenate?: boolean
  /** Lines about as long as each other: titles. */
  readonly balanced?: boolean
  /** An element already made (a list item's body), instead of a new one. */
  readonly node?: StructNode
  /** Printed again for the eye only: outside the structure. */
  readonly artifact?: boolean
}

/** Share of the leading above the base line: the same for every face, so that columns side by side agree. */
export const BASE_OF_LEADING = 0.76

/** A paragraph as rows of one line each, of which at least two stay together at either end. */
export function setParagraph(
  runs: readonly TextRun[],
  setting: ParagraphSetting,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const node = setting.artifact === true ? null : (setting.node ?? { role: setting.role, parent: area.parent })
  const lines = breakLines(runs, {
    fonts: context.fonts,
    width: area.width,
    indent: setting.indent ?? 0,
    missing: missingReporter(context),
    balanced: setting.balanced ?? false,
    hyphenate: context.hyphenate,
    wideOnly: setting.hyphenate === false || context.style.large,
  })
  const { leading } = setting.size
  return lines.map((line, index) =>
    row(
      leading,
      [
        {
          kind: 'line',
          x: index === 0 ? (setting.indent ?? 0) : 0,
          y: leading * BASE_OF_LEADING,
          fragments: line.fragments,
          node,
          ends: line.ends,
        },
      ],
      { keepNext: lines.length > 1 && index < lines.length - 1 && (index === 0 || index === lines.length - 2) },
    ),
  )
}

/** One line of runs at a place, its right edge there when `align` says so. */
export function lineItem(
  runs: readonly TextRun[],
  at: { readonly x: number; readonly y: number; readonly align?: 'left' | 'right' },
  node: StructNode | null,
  context: LayoutContext,
): { readonly item: PageItem; readonly width: number } {
  const line = oneLine(runs, { fonts: context.fonts, missing: missingReporter(context) })
  const shift = at.align === 'right' ? line.width : 0
  return {
    item: { kind: 'line', x: at.x - shift, y: at.y, fragments: line.fragments, node, ends: 'space' },
    width: line.width,
  }
}
