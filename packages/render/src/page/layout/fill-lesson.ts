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

/** The same number of pages with the last two as even as the rows allow, where the last would be nearly bare. */
function evened({ rows, options, pages: usual }: Filling): readonly FilledPage[] {
  if ((usual.at(-1)?.filled ?? 0) > options.height * BARE) return usual
  let best = usual
  let moved = 0
  for (let index = rows.length - 1; index > 0 && moved < options.height; index -= 1) {
    moved += rows[index]?.height ?? 0
    if (rows[index - 1]?.keepNext === true) continue
    const cut = rows.map((each, at): Row => (at === index ? { ...each, startsPage: 'any' } : each))
    const pages = paginate(cut, options)
    const [before, last] = pages.slice(-2)
    // A cut in the last page itself only makes one more of it.
    if (pages.length > usual.length && best === usual) continue
    if (pages.length > usual.length || before === undefined || last === undefined) break
    if (last.filled > before.filled) break
    best = pages
  }
  return best
}
