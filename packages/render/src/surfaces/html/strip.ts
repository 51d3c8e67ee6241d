import type { BarRange, Part } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { stripBars } from '../../page/document/strip-bars.ts'
import { heardRhythm } from '../../steps/heard-rhythm.ts'
import { drawStrip } from '../../strip/draw-strip.ts'
import { stripStyle } from '../../strip/strip-style.ts'
import { shareClass } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** The share of the column the widest bar takes, so that two stand side by side. */
const SHARE = 0.48
/** The column in points of the drawing: short bars are not blown up past the first, and long ones are not set smaller than the second. */
const COLUMN_PT = { least: 375, most: 550 }

/** The strum strip of some bars alone, all of one scale, side by side where there is room. */
export function stripFigure(part: Part, range: BarRange | null, context: PageContext): Element {
  const { fonts, lesson, screen, web, words } = context
  const bars = stripBars(part, range)
  const drawings = bars.map(({ bar }) => drawStrip({ part, bar, fonts, style: stripStyle(screen.minTextPt) }).drawing)
  context.drawings.push(...drawings)
  const widest = Math.max(0, ...drawings.map(({ width }) => width))
  const columnPt = Math.max(COLUMN_PT.least, Math.min(COLUMN_PT.most, widest / SHARE), widest)
  const figures = bars.flatMap(({ bar, stands }, index) => {
    const drawing = drawings[index]
    if (drawing === undefined) return []
    const name = words.barList(stands)
    return h(
      'figure',
      { className: ['own', shareClass(drawing, columnPt)] },
      el('figcaption', '', [name]),
      drawingNode(drawing, web.strip(name, heardRhythm(lesson, bar)), fonts),
    )
  })
  return h('div', { className: ['strips'], dataPart: part.id }, ...figures)
}
