import { boundsOf } from '../../drawing/bounds.ts'
import type { DrawnItem } from '../../drawing/drawing.ts'
import { line, swell } from '../../drawing/shapes.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import { type Column, type Head, isUnstruck, strikeOf } from '../layout/column.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** Thickness of ties and slurs in their middle. */
const THICK = 0.22
/** Length of the half of a tie that a break leaves. */
const HALF = 2.4

/** Draws ties, slurs and slides between neighbours, and their halves at the edges of the system. */
export function drawTies(plan: SystemPlan, columns: readonly PlacedColumn[], sketch: Sketch): void {
  columns.forEach((placed, i) => {
    const next = columns[i + 1] ?? null
    const put = (...items: readonly DrawnItem[]): void =>
      sketch.slot(placed.column.bar.number, placed.column.written.eventAt, ...items)
    if (placed.column.kind === 'rest') return
    if (next === null || (placed.column.written.tiedOut && !continues(next, placed))) drawHalfOut(placed, plan, put)
    else if (placed.column.written.tiedOut) tieTo(placed, next, put)
    else if (isUnstruck(next.column)) moveTo(placed, next, plan.fonts, put)
    if (i === 0 || (placed.column.written.tiedIn && !continues(placed, columns[i - 1]))) drawHalfIn(placed, put)
  })
}

/** Whether a column sounds on from the one before it. A later ending does not: it goes on from before the first. */
function continues(column: PlacedColumn, before: PlacedColumn | undefined): boolean {
  return column.column.written.event === before?.column.written.event
}

function tieTo(from: PlacedColumn, to: PlacedColumn, put: (...items: readonly DrawnItem[]) => void): void {
  to.column.heads.forEach((head, i) => {
    const start = headOf(from.column, head, i)
    if (start !== null) put(tie(rightOf(from, start), leftOf(to, head), head.y, curveOf(to.column, i)))
  })
}

/** Held notes are tied, moved ones slurred or slid. */
function moveTo(
  from: PlacedColumn,
  to: PlacedColumn,
  fonts: FontSet,
  put: (...items: readonly DrawnItem[]) => void,
): void {
  const slide = strikeOf(to.column)?.technique === 'slide'
  const up = to.column.stem === 'down'
  // A slur goes outside the chord when the outermost head moves; else each moved head has an arc of its own.
  let arched = (up ? to.column.heads[0] : to.column.heads.at(-1))?.note?.from === 'held'
  to.column.heads.forEach((head, i) => {
    const start = from.column.heads.find((candidate) => candidate.note?.string === head.note?.string)
    if (head.note === null || start === undefined) return
    const curve = curveOf(to.column, i)
    const [x1, x2] = [rightOf(from, start), beforeAccidentals(to, [start.y, head.y], leftOf(to, head))]
    if (head.note.from === 'held') {
      put(tie(x1, x2, head.y, curve))
      return
    }
    if (slide) {
      const [y1, y2] = [start.y + tilt(start, head), head.y - tilt(start, head)]
      put(line('slide', { x1: x1 + 0.08, y1, x2: x2 - 0.08, y2 }, 0.15))
    }
    if (!arched) {
      arched = true
      const b = slurEnd(to.column, up, fonts)
      // A slur that must climb over accidentals begins high enough to clear them.
      const climb = Math.abs(b - slurEnd(to.column, up, null)) > 0.01 ? 0.7 : Infinity
      const own = slurEnd(from.column, up, null)
      const a = up ? Math.min(own, b + climb) : Math.max(own, b - climb)
      const height = archHeight(to.cx - from.cx)
      const ends = { x1: from.cx + 0.1, y1: a, x2: to.cx - 0.1, y2: b }
      put(swell('slur', ends, { height: up ? -height : height, thickness: THICK }))
    } else if (!slide) put({ ...tie(x1, x2, start.y, curve, head.y), role: 'slur' })
  })
}

function drawHalfOut(placed: PlacedColumn, plan: SystemPlan, put: (...items: readonly DrawnItem[]) => void): void {
  const { column } = placed
  const end = (start: number): number => Math.max(start + 1, Math.min(start + HALF, plan.width - 0.3))
  if (column.written.tiedOut) {
    column.heads.forEach((head, i) => {
      const x = rightOf(placed, head)
      put(tie(x, end(x), head.y, curveOf(column, i)))
    })
    return
  }
  if (plan.next === null || !isUnstruck(plan.next)) return
  plan.next.heads.forEach((head, i) => {
    const start = column.heads.find((candidate) => candidate.note?.string === head.note?.string)
    if (start === undefined || head.note === null) return
    const x = rightOf(placed, start)
    put({ ...tie(x, end(x), start.y, curveOf(column, i)), role: head.note.from === 'held' ? 'tie' : 'slur' })
  })
}

function drawHalfIn(placed: PlacedColumn, put: (...items: readonly DrawnItem[]) => void): void {
  const { column } = placed
  const tied = column.written.tiedIn
  // The brackets about what an excerpt opens with already say that it sounds on.
  if ((!tied && !isUnstruck(column)) || column.bracketed) return
  column.heads.forEach((head, i) => {
    if (!tied && (head.note === null || head.note.from === 'struck')) return
    const x = Math.min(leftOf(placed, head), placed.cx - column.headLeft - 0.1)
    const start = Math.max(x - 1.5, placed.placed.x + 0.15)
    const held = tied || head.note?.from === 'held'
    put({ ...tie(Math.min(start, x - 0.7), x, head.y, curveOf(column, i)), role: held ? 'tie' : 'slur' })
  })
}

function headOf(column: Column, head: Head, index: number): Head | null {
  if (head.note === null) return column.heads[index] ?? null
  return column.heads.find((candidate) => candidate.note?.string === head.note?.string) ?? null
}

function rightOf({ column, cx }: PlacedColumn, head: Head): number {
  const width = column.stamp?.headWidth ?? 0.9
  const dots = column.written.value.dots > 0 ? Math.max(0, column.right - width / 2 - head.x - width / 2) : 0
  const displaced = column.heads.some((other) => Math.abs(other.y - head.y) < 0.75 && other.x > head.x + 0.3)
  const x = column.stamp === null ? cx + 0.45 : cx + head.x + width
  return x + 0.12 + dots + (displaced ? width - 0.15 : 0)
}

function leftOf({ column, cx }: PlacedColumn, head: Head): number {
  const displaced = column.heads.some((other) => Math.abs(other.y - head.y) < 0.75 && other.x < head.x - 0.3)
  return (column.stamp === null ? cx - 0.45 : cx + head.x - (displaced ? column.stamp.headWidth - 0.15 : 0)) - 0.12
}

/** Where a line into a head must stop: before the accidentals that reach to the heights it passes. */
function beforeAccidentals({ column, cx }: PlacedColumn, ys: readonly number[], x: number): number {
  const near = column.heads.some(
    ({ accidental, y }) => accidental !== null && ys.some((own) => Math.abs(y - own) < 2.4),
  )
  return near ? Math.min(x, cx - column.headLeft - 0.08) : x
}

/** Ties curve outward from the middle of a chord; that of a single note away from its stem. */
function curveOf(column: Column, index: number): 'up' | 'down' {
  if (column.heads.length === 1) return column.stem === 'up' ? 'down' : 'up'
  return index < column.heads.length / 2 ? 'up' : 'down'
}

function tie(x1: number, x2: number, y: number, curve: 'up' | 'down', y2: number = y): ReturnType<typeof swell> {
  const way = curve === 'up' ? -1 : 1
  const height = Math.min(0.9, 0.3 + 0.055 * Math.max(0, x2 - x1))
  return swell(
    'tie',
    { x1, y1: y + way * 0.22, x2, y2: y2 + way * 0.22 },
    { height: way * height, thickness: Math.min(THICK, height * 0.55) },
  )
}

function tilt(from: Head, to: Head): number {
  return from.y === to.y
    ? 0.2 * ((to.note?.fret ?? 0) > (to.note?.fromFret ?? 0) ? 1 : -1)
    : Math.sign(to.y - from.y) * 0.12
}

/** Where a slur ends outside a column; with `fonts` also outside its accidentals, over which it comes in from the left. */
function slurEnd(column: Column, up: boolean, fonts: FontSet | null): number {
  const ys = column.heads.map(({ y }) => y + (up ? -0.78 : 0.78))
  const signs = column.stamp?.items.filter((item) => item.kind !== 'group' && item.role === 'accidental') ?? []
  const ink = fonts === null ? null : boundsOf(signs, fonts)
  if (ink !== null) ys.push(up ? ink.top - 0.3 : ink.bottom + 0.3)
  return up ? Math.min(...ys) : Math.max(...ys)
}

function archHeight(width: number): number {
  return Math.min(1.3, 0.6 + width * 0.07)
}
