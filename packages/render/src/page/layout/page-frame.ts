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
export function framePage(page: FilledPage, head: RunningHead, context: LayoutContext): LaidPage {
  const { style } = context
  const right = head.number % 2 === 1
  const left = right ? style.inner : style.outer
  const size = style.label.size
  const outside = { x: right ? left + style.textWidth : left, align: right ? 'right' : 'left' } as const
  const inside = { x: right ? left : left + style.textWidth, align: right ? 'left' : 'right' } as const
  const y = style.headBase
  const heads: PageItem[] = []
  if (head.folio && !page.blank) {
    const folio = lineItem([say(head.label, 'sans-semibold', size)], { ...outside, y }, null, context)
    heads.push(folio.item)
    const text = runningText(head.text, style.textWidth - folio.width - 2 * size, context)
    if (text !== '') heads.push(lineItem([say(text, 'sans', size)], { ...inside, y }, null, context).item)
  }
  return {
    width: style.width,
    height: style.height,
    items: [...heads, ...moveItems(page.items, left, style.top)],
    label: head.label,
  }
}

/** What runs in the head: the text and the name of the edition. Where a line does not hold both, the last words of the text give way. */
function runningText(text: string | null, room: number, { editionName, fonts, style }: LayoutContext): string {
  const join = (shown: string | null): string =>
    [shown, editionName].filter((each) => each !== null && each !== '').join('\u2002·\u2002')
  const fits = (shown: string): boolean => fonts.measure('sans', style.label.size, join(shown)).width <= room
  if (text === null || fits(text)) return join(text)
  const words = text.split(' ')
  while (words.length > 0 && !fits(`${words.join(' ')}…`)) words.pop()
  return join(words.length === 0 ? null : `${words.join(' ')}…`)
}

/** Height for rows between the margins. */
export function textHeight(style: LayoutContext['style']): number {
  return style.height - style.top - style.bottom
}
