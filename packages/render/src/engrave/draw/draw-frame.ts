import { LINE, MOVE } from '../../drawing/drawing.ts'
import { translate } from '../../drawing/place.ts'
import { circle, glyphs, line, outline } from '../../drawing/shapes.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import { type Signature, signatureStamp } from '../vexflow-door/signature-stamp.ts'
import type { Hole, TabPlace } from './draw-tab.ts'
import type { SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** Draws clef, key, time, the changes of key and time, and the staff lines. */
export function drawStaff(plan: SystemPlan, sketch: Sketch): void {
  const { style, width, fonts, head } = plan
  for (let i = 0; i < 5; i += 1)
    sketch.base(line('staff-line', { x1: 0, y1: i, x2: width, y2: i }, style.lineWidth.staff))
  for (const { sign, x } of head.signs) sketch.base(...translate(signatureStamp(sign, fonts).items, x, 0))
  for (const placed of plan.pieces) {
    let x = placed.x + (placed.piece.opening === 'repeat' ? 2.3 : 0.35) + 0.55
    for (const sign of placed.piece.signs) {
      const stamp = signatureStamp(sign, fonts)
      sketch.bar(placed.piece.bar.number, ...translate(stamp.items, x, 0))
      x += stamp.width + 1
    }
  }
  let x = (plan.pieces.at(-1)?.end ?? 0) + COURTESY_GAP
  for (const sign of plan.courtesy) {
    const stamp = signatureStamp(sign, fonts)
    sketch.base(...translate(stamp.items, x, 0))
    x += stamp.width + COURTESY_GAP
  }
}

const COURTESY_GAP = 0.8

/** The room that signs take after the last bar line of a system. */
export function courtesyWidth(signs: readonly Signature[], fonts: FontSet): number {
  return signs.reduce(
    (sum, sign) => sum + signatureStamp(sign, fonts).width + COURTESY_GAP,
    signs.length === 0 ? 0 : COURTESY_GAP,
  )
}

/** Draws the tab lines around their holes, the word TAB, bar lines through both staves, and the line that joins them. */
export function drawTabFrame(plan: SystemPlan, place: TabPlace, holes: readonly Hole[], sketch: Sketch): void {
  const { style, width, instrument, fonts } = plan
  const strings = instrument.tuning.length
  const bottom = place.top + (strings - 1) * place.space
  for (let string = 1; string <= strings; string += 1) {
    const y = place.top + (string - 1) * place.space
    const data = openStretches(
      width,
      holes.filter((hole) => hole.string === string),
    ).flatMap(([a, b]) => [MOVE, a, y, LINE, b, y])
    sketch.base(outline('tab-line', data, style.lineWidth.tab))
  }
  const height = (strings - 1) * place.space
  const clef = fonts.measure('music', 1, '\ue06d')
  const size = Math.min((height * 0.98) / (clef.bottom - clef.top), 6.2)
  const x = 0.62 - clef.left * size
  sketch.base(
    glyphs('clef', 'music', size, '\ue06d', { x, y: place.top + height / 2 - ((clef.top + clef.bottom) / 2) * size }),
  )
  sketch.base(line('system-line', { x1: 0, y1: -0.055, x2: 0, y2: bottom + 0.045 }, style.lineWidth.bar))
  for (const placed of plan.pieces) {
    const { piece, x: left, end } = placed
    const number = piece.bar.number
    const bar = (at: number, width: number): void =>
      sketch.bar(
        number,
        line('bar-line', { x1: at, y1: -0.055, x2: at, y2: 4.055 }, width),
        line('bar-line', { x1: at, y1: place.top - 0.045, x2: at, y2: bottom + 0.045 }, width),
      )
    const dots = (at: number): void => {
      for (const y of [1.5, 2.5]) sketch.bar(number, circle('repeat-dot', { x: at, y, radius: 0.2 }, 0))
      const middle = (strings - 1) / 2
      const away = strings % 2 === 0 ? 1 : 0.5
      for (const step of [-away, away]) {
        const y = place.top + (middle + step) * place.space
        sketch.bar(number, circle('repeat-dot', { x: at, y, radius: 0.2 }, 0))
      }
    }
    const thin = style.lineWidth.bar
    const heavy = style.lineWidth.heavy
    if (piece.opening === 'repeat') {
      const first = left <= plan.head.width + 0.01 ? left + 0.1 : left
      bar(first + heavy / 2, heavy)
      bar(first + heavy + 0.4, thin)
      dots(first + heavy + 0.95)
    }
    const next = plan.pieces[plan.pieces.indexOf(placed) + 1]
    if (piece.closing === 'repeat') {
      bar(end - heavy / 2, heavy)
      bar(end - heavy - 0.4, thin)
      dots(end - heavy - 0.95)
    } else if (piece.closing === 'final') {
      bar(end - heavy / 2, heavy)
      bar(end - heavy - 0.4, thin)
    } else if (piece.closing === 'double') {
      bar(end - thin / 2, thin)
      bar(end - thin / 2 - 0.45, thin)
    } else if (piece.closing === 'single' && next?.piece.opening !== 'repeat') bar(end - thin / 2, thin)
  }
}

/** What is left of a line from 0 to `width` when the holes are taken out. */
function openStretches(width: number, holes: readonly Hole[]): readonly (readonly [number, number])[] {
  const stretches: (readonly [number, number])[] = []
  let from = 0
  for (const { left, right } of [...holes].sort((a, b) => a.left - b.left)) {
    if (left > from && left < width) stretches.push([from, left])
    from = Math.max(from, right)
  }
  if (from < width) stretches.push([from, width])
  return stretches.filter(([a, b]) => b - a > 0.02)
}
