import type { LessonDocument } from '../document/document-block.ts'
import { type LessonPlace, layOutLesson } from './lay-out-lesson.ts'
import type { LayoutContext } from './layout-context.ts'
import { textHeight } from './page-frame.ts'
import { type FilledPage, type PaginateOptions, paginate } from './paginate.ts'
import type { Row } from './row.ts'

/** A last page filled less than this share is worth avoiding. */
const POOR = 0.5

/** Tighter settings, tried in order: what is left of staff space and of the room between rows. The least a careful engraver would go to. */
const TIGHTER: readonly { readonly staff: number; readonly gaps: number }[] = [
  { staff: 1, gaps: 0.75 },
  { staff: 0.94, gaps: 0.7 },
]

/** The pages of a lesson. Where its last page would hold little, a slightly tighter setting is taken if it saves that page. */
export function fillLesson(
  document: LessonDocument,
  place: LessonPlace,
  firstNumber: number,
  context: LayoutContext,
): readonly FilledPage[] {
  const height = textHeight(context.style)
  const fill = (each: LayoutContext, gapShare: number): Filling => {
    const rows = layOutLesson(document, place, each)
    const options = { height, firstNumber, gapShare }
    return { rows, options, pages: paginate(rows, options) }
  }
  const usual = fill(context, 1)
  const last = usual.pages.at(-1)
  if (usual.pages.length < 2 || last === undefined || last.filled > height * POOR) return usual.pages
  for (const { staff, gaps } of TIGHTER) {
    const { style } = context
    const tighter = {
      ...context,
      style: { ...style, staffSpace: style.staffSpace * staff, cardStaffSpace: style.cardStaffSpace * staff },
    }
    const saving = fill(tighter, gaps)
    if (saving.pages.length < usual.pages.length) return evened(saving)
  }
  return evened(usual)
}

/** Rows with the pages they fill. */
interface Filling {
  readonly rows: readonly Row[]
  readonly options: PaginateOptions
  readonly pages: readonly FilledPage[]
}

/** A last page filled less than this share takes over what ends the page before it, as long as it stays the emptier of the two. */
const BARE = 0.35

/** How much lower each try at a lower page is, in points: less than a line of text. */
const STEP = 6

/** The same number of pages where the last would be nearly bare: it takes over no more than it needs not to be. */
function evened({ rows, options, pages: usual }: Filling): readonly FilledPage[] {
  if ((usual.at(-1)?.filled ?? 0) > options.height * BARE) return usual
  let best = usual
  for (let height = usual.at(-2)?.filled ?? 0; height > 0; height -= STEP) {
    const pages = paginate(rows, { ...options, lowered: { page: usual.length - 2, height } })
    const [before, last] = pages.slice(-2)
    if (pages.length > usual.length || before === undefined || last === undefined || last.filled > before.filled) break
    best = pages
    if (last.filled >= options.height * BARE) break
  }
  return best
}
