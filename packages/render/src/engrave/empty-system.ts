import type { Drawing, DrawnItem } from '../drawing/drawing.ts'
import { line } from '../drawing/shapes.ts'
import { engraveStyle } from './style.ts'

export interface EmptySystemInput {
  readonly bars: number
  /** Strings of the tab. */
  readonly strings: number
  readonly widthPt: number
  readonly staffSpacePt: number
}

/** Empty staff and tab with bar lines, to write in. Points. */
export function drawEmptySystem({ bars, strings, widthPt, staffSpacePt: sp }: EmptySystemInput): Drawing {
  const style = engraveStyle(sp, 0)
  const top = 0.5
  const tabTop = top + 9.2 * sp
  const bottom = tabTop + (strings - 1) * style.tabSpace * sp
  const across = (y: number, thickness: number): DrawnItem =>
    line('staff-line', { x1: 0, y1: y, x2: widthPt, y2: y }, thickness * sp)
  const upright = (role: 'system-line' | 'bar-line', x: number, from: number, to: number): DrawnItem =>
    line(role, { x1: x, y1: from, x2: x, y2: to }, style.lineWidth.bar * sp)
  const half = (style.lineWidth.bar * sp) / 2
  const items: DrawnItem[] = [upright('system-line', half, top, bottom)]
  for (let index = 0; index < 5; index += 1) items.push(across(top + index * sp, style.lineWidth.staff))
  for (let index = 0; index < strings; index += 1) {
    items.push(across(tabTop + index * style.tabSpace * sp, style.lineWidth.tab))
  }
  for (let bar = 1; bar <= bars; bar += 1) {
    const x = Math.min(widthPt - half, (widthPt * bar) / bars)
    items.push(upright('bar-line', x, top, top + 4 * sp), upright('bar-line', x, tabTop, bottom))
  }
  return { kind: 'drawing', width: widthPt, height: bottom + 0.5, items }
}
