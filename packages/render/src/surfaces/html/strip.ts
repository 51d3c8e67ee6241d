import type { BarRange, Part } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { drawStrip } from '../../strip/draw-strip.ts'
import { stripStyle } from '../../strip/strip-style.ts'
import { shareClass } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** The widest bar takes at most this share of the column, so that two stand side by side; short bars are not blown up past this width in points. */
const SHARE = 0.48
const LEAST_COLUMN_PT = 375

/** The strum strip of some bars alone, a figure a bar, all of one scale, side by side where there is room. */
export function stripFigure(part: Part, range: BarRange | null, context: PageContext): Element {
  const { fonts, screen, web } = context
  const bars = part.bars.filter(({ number }) => range === null || (number >= range.from && number <= range.to))
  const drawings = bars.map((bar) => drawStrip({ part, bar, fonts, style: stripStyle(screen.minTextPt) }).drawing)
  context.drawings.push(...drawings)
  const columnPt = Math.max(LEAST_COLUMN_PT, ...drawings.map(({ width }) => width / SHARE))
  const figures = drawings.map((drawing, index) => {
    const name = web.bar(bars[index]?.number ?? 0)
    return h(
      'figure',
      { className: ['own', shareClass(drawing, columnPt)] },
      el('figcaption', '', [name]),
      drawingNode(drawing, web.strip(name), fonts),
    )
  })
  return el('div', 'strips', figures)
}
