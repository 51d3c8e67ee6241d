import { pointsOf } from '../../drawing/lengths.ts'
import type { MarginNote } from '../document/margin-note.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem } from './page-content.ts'
import { moveItems, stackRows } from './row.ts'
import { setMarginNotes } from './set-margin-notes.ts'

/** Things set relative to one top left corner, and how high they are. */
export interface SetItems {
  readonly items: readonly PageItem[]
  readonly height: number
}

/** A column of a card, how far down it is filled, and where the next thing under it begins (null when nothing does). */
export interface CardColumn {
  readonly x: number
  readonly width: number
  readonly bottom: number
  readonly until: number | null
}

const GAP = pointsOf(2.2)
/** Less than this, in points, is not worth another place. */
const SAME = 0.5

/** A card with notes: under the column where they make it the least higher, the first of those where that is the same. */
export function withNotes(
  card: SetItems,
  given: { readonly notes: readonly MarginNote[]; readonly columns: readonly CardColumn[] },
  area: Area,
  context: LayoutContext,
): SetItems {
  const { notes, columns } = given
  if (notes.length === 0) return card
  const gap = GAP * context.style.ease
  const ways = columns.flatMap(({ x, width, bottom, until }): readonly SetItems[] => {
    const room = Math.min(width, context.style.measure)
    const set = stackRows(setMarginNotes(notes, { ...area, width: room }, context))
    const end = bottom + gap + set.height
    if (until !== null && end > until) return []
    const items = [...card.items, ...moveItems(set.items, x, bottom + gap)]
    return [{ items, height: Math.max(card.height, end) }]
  })
  return ways.reduce((best, way) => (way.height < best.height - SAME ? way : best), ways[0] ?? card)
}
