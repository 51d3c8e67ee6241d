import type { PageItem } from './page-content.ts'

/** A stretch of the page that is never cut: a line of text, a system, a card. Items lie relative to its top and to the left of the text. */
export interface Row {
  readonly height: number
  /** Room above; the larger of two that meet counts, and none is left at the top of a page. */
  readonly before: number
  readonly after: number
  readonly items: readonly PageItem[]
  /** Whether the next row must stand on the same page: headings, first and last lines. */
  readonly keepNext: boolean
  /** What happens where it would open a page: rules between groups are dropped there. */
  readonly atTop: 'keep' | 'drop'
  /** Rows printed again above it when it opens a page: the header of a table. */
  readonly again: readonly Row[]
  readonly startsPage: 'no' | 'any' | 'right'
  /** What it is cut into where it is higher than a page, or where moving it whole would leave most of a page empty; none where it is never cut. */
  readonly pieces: readonly Row[]
  /** Cuts it where only so much room is left, in points; null where it is never cut there. */
  readonly cut: ((room: number) => CutRow | null) | null
}

/** A row cut at a page's foot: what still stands there, and what goes over. */
export interface CutRow {
  readonly here: Row
  readonly over: Row
}

/** A row with nothing special about it, but for what is given. */
export function row(
  height: number,
  items: readonly PageItem[],
  given: Partial<Omit<Row, 'height' | 'items'>> = {},
): Row {
  return {
    height,
    items,
    before: 0,
    after: 0,
    keepNext: false,
    atTop: 'keep',
    again: [],
    startsPage: 'no',
    pieces: [],
    cut: null,
    ...given,
  }
}

/** Items moved right and down. */
export function moveItems(items: readonly PageItem[], dx: number, dy: number): readonly PageItem[] {
  return items.map((item) => {
    switch (item.kind) {
      case 'anchor':
      case 'outline':
        return { ...item, y: item.y + dy }
      default:
        return { ...item, x: item.x + dx, y: item.y + dy }
    }
  })
}

/** The rows of a column one under the other as items, with its height: for columns side by side. */
export function stackRows(rows: readonly Row[]): { readonly items: readonly PageItem[]; readonly height: number } {
  const items: PageItem[] = []
  let [y, after] = [0, 0]
  rows.forEach((each, index) => {
    if (index > 0) y += Math.max(after, each.before)
    items.push(...moveItems(each.items, 0, y))
    y += each.height
    after = each.after
  })
  return { items, height: y }
}

/** The height of rows one under the other, the room between them included. */
export function rowsHeight(rows: readonly Row[]): number {
  return stackRows(rows).height
}

/** Rows moved right. */
export function indentRows(rows: readonly Row[], dx: number): readonly Row[] {
  return rows.map((each) => ({ ...each, items: moveItems(each.items, dx, 0) }))
}

/** Rows with more room above the first and below the last. */
export function spaceRows(rows: readonly Row[], before: number, after: number): readonly Row[] {
  return rows.map((each, index) => ({
    ...each,
    before: index === 0 ? Math.max(each.before, before) : each.before,
    after: index === rows.length - 1 ? Math.max(each.after, after) : each.after,
  }))
}

/** Holds all rows on one page. */
export function keepTogether(rows: readonly Row[]): readonly Row[] {
  return rows.map((each, index) => (index < rows.length - 1 ? { ...each, keepNext: true } : each))
}
