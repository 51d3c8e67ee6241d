import type { Element } from 'hast'
import { boundsOf } from '../../drawing/bounds.ts'
import { drawLegend, signsInUse } from '../../strip/legend.ts'
import type { StripCell } from '../../strip/strip-cells.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** The key to the strip: each sign in use, drawn as in the strip, with its words as real text. */
export function stripLegend(cells: readonly StripCell[], context: PageContext): Element {
  const items = signsInUse(cells).map((sign) => {
    const words = { ...context.words.legend, [sign]: ' ' }
    const whole = drawLegend({ signs: [sign], fonts: context.fonts, widthPt: 100, words })
    const drawing = { ...whole, width: boundsOf(whole.items, context.fonts)?.right ?? 0 }
    context.drawings.push(drawing)
    return el('li', '', [drawingNode(drawing, '', context.fonts), context.words.legend[sign]])
  })
  return el('ul', 'legend', items)
}
