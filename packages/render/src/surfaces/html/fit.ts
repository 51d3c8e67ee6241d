import type { Element, ElementContent } from 'hast'
import { h } from 'hastscript'
import type { Drawing } from '../../drawing/drawing.ts'

/** The class for a drawing's share of the column, in whole percents, so that all drawings beside each other are of one scale. */
export function shareClass(drawing: Drawing, columnPt: number): string {
  return `w${shareOf(drawing, columnPt)}`
}

/** A drawing's share of the column in whole percents, 1 to 100. */
export function shareOf(drawing: Drawing, columnPt: number): number {
  return Math.max(1, Math.min(100, Math.round((drawing.width / columnPt) * 100)))
}

/** A drawing's node in a box of its share of the column. */
export function fitted(node: ElementContent, drawing: Drawing, columnPt: number): Element {
  return h('div', { className: ['fit', shareClass(drawing, columnPt)] }, node)
}

/**
 * The rules of the share classes: `w40` is the share of the drawing inside a box, or of a box that is `own` as wide as its drawing;
 * `b40` the share of the figure in a card that has its words beside it.
 */
export function shareRules(): string {
  const shares = Array.from({ length: 100 }, (_, index) => index + 1)
  const drawings = shares.map((share) => `.w${share}>svg,.own.w${share}{width:${share}%}`)
  const beside = shares.map((share) => `.b${share}>.told{grid-template-columns:${share}% 1fr}`)
  return [...drawings, ...beside].join('')
}
