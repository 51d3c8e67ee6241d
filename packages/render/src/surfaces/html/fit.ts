import type { Element, ElementContent } from 'hast'
import { h } from 'hastscript'
import type { Drawing } from '../../drawing/drawing.ts'

/** The class for a drawing's share of the column, in whole percents, so that all drawings beside each other are of one scale. */
export function shareClass(drawing: Drawing, columnPt: number): string {
  return `w${Math.max(1, Math.min(100, Math.round((drawing.width / columnPt) * 100)))}`
}

/** A drawing's node in a box of its share of the column. */
export function fitted(node: ElementContent, drawing: Drawing, columnPt: number): Element {
  return h('div', { className: ['fit', shareClass(drawing, columnPt)] }, node)
}

/** The rules of the share classes. */
export function shareRules(): string {
  return Array.from({ length: 100 }, (_, index) => `.w${index + 1}>svg{width:${index + 1}%}`).join('')
}
