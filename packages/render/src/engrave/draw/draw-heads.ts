import { CURVE, type DrawnItem, LINE, MOVE, type Path } from '../../drawing/drawing.ts'
import { translate } from '../../drawing/place.ts'
import { circle, cross, glyphs, line, outline } from '../../drawing/shapes.ts'
import { isSlidInto, strikeOf } from '../layout/column.ts'
import type { BeamLine } from './beam-line.ts'
import { CROSS_ARM } from './draw-stems.ts'
import type { PlacedColumn } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** Draws heads, rests, crosses and what stands beside them: brackets, rolls, slides from nowhere and into nothing. */
export function drawHeads(columns: readonly PlacedColumn[], beams: readonly BeamLine[], sketch: Sketch): void {
  for (const placed of columns) {
    const { column, cx } = placed
    const put = (...items: readonly DrawnItem[]): void =>
      sketch.slot(column.bar.number, column.written.eventAt, ...items)
    if (column.kind === 'rest') put(...restItems(placed, beams))
    else if (column.stamp !== null) put(...translate(column.stamp.items, cx - column.stamp.headWidth / 2, 0))
    else drawCrosses(placed, put)
    if (column.kind === 'rest') continue
    const top = (column.heads[0]?.y ?? 2) - 0.6
    const bottom = (column.heads.at(-1)?.y ?? 2) + 0.6
    const right = Math.max(...column.heads.map((head) => head.x)) + (column.stamp?.headWidth ?? 1)
    if (column.bracketed) put(...brackets(cx - column.headLeft - 0.2, cx + right + 0.28, top, bottom))
    const strike = strikeOf(column)
    if (strike === null || column.written.tiedIn) continue
    if (strike.rolled && strike.notes.length > 1)
      put(...rollItems(cx - column.headLeft - 0.55, top, bottom, strike.stroke === 'up'))
    if (isSlidInto(column)) {
      const x2 = cx - column.headLeft - (column.bracketed ? 1.07 : 0.12)
      for (const head of column.heads) put(slideLine(x2 - 1.15, x2, head.y, slidUp(strike, head.note?.string)))
    }
    if (strike.marks.includes('slide-off')) {
      // A flag hangs clear above; only dots stand in the way.
      const x1 = cx + (column.written.value.dots > 0 ? column.headRight : right) + 0.2
      for (const head of column.heads)
        put(line('slide', { x1, y1: head.y + 0.05, x2: x1 + 1.2, y2: head.y + 0.6 }, 0.15))
    }
  }
}

function slidUp(strike: NonNullable<ReturnType<typeof strikeOf>>, string: number | undefined): boolean {
  const note = strike.notes.find((candidate) => candidate.string === string)
  return note === undefined || note.fromFret === null || note.fret === null || note.fromFret <= note.fret
}

/** A short line into a head or figure, rising when the slide does. */
export function slideLine(x1: number, x2: number, y: number, up: boolean): Path {
  const tilt = up ? 0.24 : -0.24
  return line('slide', { x1, y1: y + tilt + 0.04, x2, y2: y - tilt + 0.04 }, 0.15)
}

/** Round brackets about a column, as tall as it is. */
export function brackets(left: number, right: number, top: number, bottom: number): readonly Path[] {
  const middle = (top + bottom) / 2
  const bulge = Math.min(0.6, 0.3 + (bottom - top) * 0.06)
  const side = (x: number, out: number): Path =>
    outline(
      'bracket',
      [MOVE, x, top, CURVE, x + out, middle - (middle - top) * 0.4, x + out, middle + (middle - top) * 0.4, x, bottom],
      0.14,
    )
  return [side(left, -bulge), side(right, bulge)]
}

function restItems({ column, cx, placed }: PlacedColumn, beams: readonly BeamLine[]): ReturnType<typeof translate> {
  const stamp = column.stamp
  if (stamp === null) return []
  const pieces = placed.piece.built.columns.length
  const middle =
    column.written.wholeBar && pieces === 1 ? (placed.x + placed.piece.lead - column.left - 0.4 + placed.end) / 2 : cx
  let shift = 0
  for (const beam of beams) {
    const [first, last] = [beam.columns[0]?.cx ?? 0, beam.columns.at(-1)?.cx ?? 0]
    if (cx <= first || cx >= last) continue
    const inside = beam.yAt(cx) + (beam.stem === 'down' ? -1.6 : 1.6)
    if (beam.stem === 'down' && stamp.bottom > inside) shift = -Math.ceil(stamp.bottom - inside)
    if (beam.stem === 'up' && stamp.top < inside) shift = Math.ceil(inside - stamp.top)
  }
  return translate(stamp.items, middle - (stamp.left + stamp.right) / 2, shift)
}

function drawCrosses({ column, cx }: PlacedColumn, put: (...items: readonly DrawnItem[]) => void): void {
  const long = column.written.value.base <= 2
  for (const head of column.heads) {
    put(cross('scratch-head', { x: cx, y: head.y, armX: CROSS_ARM, armY: CROSS_ARM * 0.9 }, long ? 0.12 : 0.17))
    if (long) put(circle('scratch-head', { x: cx, y: head.y, radius: 0.48 }, 0.09))
  }
  for (let i = 0; i < column.written.value.dots; i += 1) {
    for (const head of column.heads)
      put(glyphs('dot', 'music', 4, '\ue1e7', { x: cx + 0.8, y: head.y + 0.5 - (head.y % 1) }))
  }
  const { event, tiedIn } = column.written
  if (event.kind === 'rest' || tiedIn) return
  const above = column.stem === 'down'
  const edge = above ? Math.min(column.heads[0]?.y ?? 1, 0.4) - 1.1 : Math.max(column.heads.at(-1)?.y ?? 3, 3.6) + 1.1
  let y = edge
  if (event.marks.includes('short')) {
    put(circle('articulation', { x: cx, y, radius: 0.19 }, 0))
    y += above ? -0.8 : 0.8
  }
  if (event.marks.includes('accent')) {
    put(glyphs('articulation', 'music', 4, above ? '\ue4a0' : '\ue4a1', { x: cx - 0.68, y: above ? y + 0.3 : y - 0.3 }))
  }
}

/** A wavy line with a head that points the way the strings are rolled: upward in a down stroke. */
export function rollItems(x: number, top: number, bottom: number, downward: boolean): readonly Path[] {
  const data: number[] = [MOVE, x, bottom]
  const waves = Math.max(2, Math.round((bottom - top) / 0.7))
  const step = (bottom - top) / waves
  for (let i = 0; i < waves; i += 1) {
    const y = bottom - i * step
    const out = i % 2 === 0 ? 0.32 : -0.32
    data.push(CURVE, x + out, y - step * 0.3, x + out, y - step * 0.7, x, y - step)
  }
  const tip = downward ? bottom + 0.5 : top - 0.5
  const base = downward ? bottom - 0.15 : top + 0.15
  const arrow = [MOVE, x - 0.34, base, LINE, x, tip, LINE, x + 0.34, base]
  return [outline('roll', data, 0.15), outline('roll', arrow, 0.15)]
}
