import type { PageItem } from './page-content.ts'
import { moveItems, type Row } from './row.ts'

/** A page of rows before heads and folios are added: what stands on it, relative to the text's top left corner. */
export interface FilledPage {
  readonly items: readonly PageItem[]
  /** How far down it is filled, in points. */
  readonly filled: number
  /** Whether it is left empty so that what follows opens on a right-hand page. */
  readonly blank: boolean
}

export interface PaginateOptions {
  readonly height: number
  /** The number of the first page, counted from 1: odd pages are right-hand ones. */
  readonly firstNumber: number
  /** What is left of the room between rows; all of it when left out. */
  readonly gapShare?: number
  /** A page that is filled less high than the others, counted from 0. */
  readonly lowered?: { readonly page: number; readonly height: number }
}

/** A place where a page may end: after `index`. */
interface Chunk {
  readonly rows: readonly Row[]
}

const NEARLY = 0.5
/** A page filled less than this share is not left for a row that can be cut. */
const SPARSE = 0.35
/** A page gives up to a quarter of the room between its rows to hold one more of them. */
const GIVE = 0.75

/**
 * Fills pages with rows. A page never ends after a row that keeps the next; among the places left, the page is filled as far as it goes.
 * A page that is over by little gives some of the room between its rows. Rows that must stay together but are higher than a whole page are cut
 * where the page is full; so is a row that has pieces, also where it would leave most of a page empty. A row that says how is cut at the foot of any page. Another row as high is set on a page of its
 * own and runs over its foot.
 */
export function paginate(rows: readonly Row[], options: PaginateOptions): readonly FilledPage[] {
  const gapShare = options.gapShare ?? 1
  const pages: FilledPage[] = []
  let page: Row[] = []
  const { lowered } = options
  const heightNow = (): number => (lowered?.page === pages.length ? lowered.height : options.height)
  const close = (): void => {
    if (page.length > 0) pages.push(fill(page, shareThatFits(page, heightNow(), gapShare)))
    page = []
  }
  const waiting = [...chunksOf(rows, options.height)]
  for (let chunk = waiting.shift()?.rows; chunk !== undefined; chunk = waiting.shift()?.rows) {
    const first = chunk[0]
    if (first === undefined) continue
    if (first.startsPage !== 'no') {
      close()
      const number = options.firstNumber + pages.length
      if (first.startsPage === 'right' && number % 2 === 0) pages.push({ items: [], filled: 0, blank: true })
    }
    const overflows = heightOf([...page, ...chunk], gapShare * GIVE) > heightNow() + NEARLY
    const sparse = heightOf(page, gapShare) < options.height * SPARSE
    const pieces = chunk.at(-1)?.pieces ?? []
    const cut = overflows ? cutAtFoot(page, chunk, heightNow(), gapShare) : null
    if (cut !== null) {
      page.push(...cut.here)
      close()
      waiting.unshift({ rows: [cut.over] })
    } else if (overflows && sparse && pieces.length > 0) {
      waiting.unshift(...chunksOf([...chunk.slice(0, -1), ...pieces], options.height))
    } else if (page.length > 0 && overflows) {
      close()
      waiting.unshift({ rows: chunk })
    } else page.push(...(page.length === 0 ? openPage(chunk) : chunk))
  }
  close()
  return pages
}

/** Rows that must stay together, by their `keepNext`, as far as a page holds them. A row higher than a page is its pieces. */
function chunksOf(rows: readonly Row[], height: number): readonly Chunk[] {
  const chunks: Chunk[] = []
  let chunk: Row[] = []
  const flat = rows.flatMap((each) => (each.height > height && each.pieces.length > 0 ? each.pieces : [each]))
  flat.forEach((each, index) => {
    chunk.push(each)
    const next = flat[index + 1]
    const held = each.keepNext && next?.startsPage === 'no'
    // Of a row that can be cut, what it is cut into stays with what leads to it.
    const least = next === undefined || next.cut === null ? next : { ...next, height: 0 }
    if (held && least !== undefined && heightOf(openPage([...chunk, least]), GIVE) <= height + NEARLY) return
    chunks.push({ rows: chunk })
    chunk = []
  })
  if (chunk.length > 0) chunks.push({ rows: chunk })
  return chunks
}

/** A chunk whose last row can be cut in the room that the page has left: what stands on the page, and what goes over. */
function cutAtFoot(
  page: readonly Row[],
  chunk: readonly Row[],
  height: number,
  gapShare: number,
): { readonly here: readonly Row[]; readonly over: Row } | null {
  const last = chunk.at(-1)
  if (last?.cut == null) return null
  const led = page.length === 0 ? openPage(chunk.slice(0, -1)) : chunk.slice(0, -1)
  const cut = last.cut(height - heightOf([...page, ...led, { ...last, height: 0 }], gapShare))
  return cut === null ? null : { here: [...led, cut.here], over: cut.over }
}

/** The rows as they open a page: rules meant to part are dropped, table headers come again. */
function openPage(chunk: readonly Row[]): readonly Row[] {
  const kept = chunk.slice(chunk.findIndex((each) => each.atTop === 'keep'))
  const rows = kept.length === 0 ? chunk : kept
  return [...(rows[0]?.again ?? []), ...rows]
}

/** The share of the room between rows at which they just fit; all of `gapShare` when they do anyway. */
function shareThatFits(rows: readonly Row[], height: number, gapShare: number): number {
  const solid = heightOf(rows, 0)
  const gaps = heightOf(rows, 1) - solid
  if (gaps <= 0 || solid + gaps * gapShare <= height) return gapShare
  return Math.max(gapShare * GIVE, (height - solid) / gaps)
}

function heightOf(rows: readonly Row[], gapShare: number): number {
  let [y, after] = [0, 0]
  rows.forEach((each, index) => {
    y += (index === 0 ? 0 : Math.max(after, each.before) * gapShare) + each.height
    after = each.after
  })
  return y
}

function fill(rows: readonly Row[], gapShare: number): FilledPage {
  const items: PageItem[] = []
  let [y, after] = [0, 0]
  rows.forEach((each, index) => {
    if (index > 0) y += Math.max(after, each.before) * gapShare
    items.push(...moveItems(each.items, 0, y))
    y += each.height
    after = each.after
  })
  return { items, filled: y, blank: false }
}
