import type { Element, ElementContent } from 'hast'
import { h } from 'hastscript'
import type { Drawing } from '../../drawing/drawing.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import { drawingToSvg, sharedGlyphs } from '../svg.ts'

/**
 * A drawing as a node. This and `glyphStore` are the only places where markup is passed on as it stands; it comes from the
 * SVG surface, never from a lesson. An empty label hides the drawing from screen readers: words beside it say the same.
 */
export function drawingNode(drawing: Drawing, label: string, fonts: FontSet): ElementContent {
  return raw(drawingToSvg(drawing, { fonts, label, glyphs: 'shared' }))
}

/** The hidden SVG that holds the glyphs of all drawings of a page. */
export function glyphStore(drawings: readonly Drawing[], fonts: FontSet): ElementContent {
  return h('div', { className: ['glyphs'] }, raw(sharedGlyphs(drawings, fonts)) as never)
}

function raw(value: string): ElementContent {
  // hast-util-to-html writes `raw` nodes as they are; the hast types know them only through another package.
  return { type: 'raw', value } as unknown as ElementContent
}

/** An element with class names, as in `el('p', 'sub', [...])`; an empty name gives none. */
export function el(name: string, classes: string, children: readonly (ElementContent | string)[]): Element {
  return h(name, classes === '' ? {} : { className: classes.split(' ') }, ...children)
}

/** Words that only a screen reader speaks. */
export function spoken(text: string): Element {
  return h('span', { className: ['spoken'] }, text)
}
