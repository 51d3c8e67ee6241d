import type { LayoutContext } from './layout-context.ts'
import type { LaidPage, PageItem } from './page-content.ts'
import type { FilledPage } from './paginate.ts'
import { moveItems } from './row.ts'
import { lineItem } from './set-text.ts'
import { say } from './text-run.ts'

/** What stands in the head of a page: nothing but the folio where a lesson opens. */
export interface RunningHead {
  readonly text: string | null
  readonly label: string
  /** Counted from 1 within its numbering; odd pages are right-hand ones. */
  readonly number: number
  /** Whether the folio is printed. */
  readonly folio: boolean
}

/** A filled page on its paper: margins mirrored, folio outside, running head inside. */
export function framePage(
  page: FilledPage,
  head: RunningHead,
  context: Pick<
    LayoutContext,
    'style' | 'fonts' | 'words' | 'lesson' | 'lessonId' | 'images' | 'hyphenate' | 'report' | 'editionName'
  >,
): LaidPage {
  const { style } = context
  const right = head.number % 2 === 1
  const left = right ? style.inner : style.outer
  const size = style.small.size
  const outside = { x: right ? left + style.textWidth : left, align: right ? 'right' : 'left' } as const
  const inside = { x: right ? left : left + style.textWidth, align: right ? 'left' : 'right' } as const
  const y = style.headBase
  const heads: PageItem[] = []
  if (head.folio && !page.blank) {
    heads.push(lineItem([say(head.label, 'sans-semibold', size)], { ...outside, y }, null, context).item)
    const text = [head.text, context.editionName].filter((words) => words !== null).join('\u2002·\u2002')
    if (text !== '') heads.push(lineItem([say(text, 'sans', size)], { ...inside, y }, null, context).item)
  }
  return {
    width: style.width,
    height: style.height,
    items: [...heads, ...moveItems(page.items, left, style.top)],
    label: head.label,
  }
}

/** Height for rows between the margins. */
export function textHeight(style: LayoutContext['style']): number {
  return style.height - style.top - style.bottom
}
