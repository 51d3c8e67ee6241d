import type { BarRange, Part } from '@barwise/parser'
import type { Element } from 'hast'
import { drawStrip } from '../../strip/draw-strip.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** The strum strip of some bars alone, a figure a bar, side by side where there is room. */
export function stripFigure(part: Part, range: BarRange | null, context: PageContext): Element {
  const bars = part.bars.filter(({ number }) => range === null || (number >= range.from && number <= range.to))
  const figures = bars.map((bar) => {
    const { drawing } = drawStrip({ part, bar, fonts: context.fonts })
    context.drawings.push(drawing)
    const name = context.web.bar(bar.number)
    return el('figure', '', [
      el('figcaption', '', [name]),
      drawingNode(drawing, context.web.strip(name), context.fonts),
    ])
  })
  return el('div', 'strips', figures)
}
