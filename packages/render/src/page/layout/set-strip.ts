import type { Bar, BarRange, Part } from '@barwise/parser'
import type { Drawing } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { heardRhythm } from '../../steps/heard-rhythm.ts'
import { drawStrip } from '../../strip/draw-strip.ts'
import { type BarStretch, cutToFit } from '../../strip/middle-beat.ts'
import { stripStyle } from '../../strip/strip-style.ts'
import { stripBars } from '../document/strip-bars.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { type Row, row } from './row.ts'
import { BASE_OF_LEADING, lineItem } from './set-text.ts'
import { say } from './text-run.ts'

const GUTTER = pointsOf(4)

/** The strum strip alone, bar by bar, as many side by side as the width holds; one wider than that is cut at its middle beat. */
export function setStrips(
  strip: { readonly part: Part; readonly bars: BarRange | null },
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { part, bars } = strip
  const { style, lesson } = context
  const rows: Row[] = []
  let items: PageItem[] = []
  let [x, height] = [0, 0]
  const close = (keepNext = false): void => {
    const gap = pointsOf(3)
    if (items.length > 0) rows.push(row(height, items, { before: gap, after: gap, keepNext }))
    items = []
    ;[x, height] = [0, 0]
  }
  for (const { bar, stands } of stripBars(part, bars)) {
    const [first, ...later] = cutToFit(
      bar,
      { fromTicks: 0, toTicks: bar.length },
      (stretch) => stripOf(part, bar, stretch, context).width <= area.width,
    ).map((stretch) => stripOf(part, bar, stretch, context))
    if (first === undefined) continue
    const title = context.words.barList(stands)
    const node: StructNode = { role: 'Figure', parent: area.parent, alt: `${title}. ${heardRhythm(lesson, bar)}` }
    const { size, leading } = style.small
    if (x > 0 && (later.length > 0 || x + first.width > area.width)) close()
    const name = [say(title, 'sans-semibold', size)]
    const label = lineItem(name, { x, y: leading * BASE_OF_LEADING }, { role: 'P', parent: area.parent }, context)
    items.push(label.item, { kind: 'figure', x, y: leading + 2, drawing: first, node })
    height = Math.max(height, leading + 2 + first.height)
    x += first.width + GUTTER
    // The pieces of a bar that was cut stand one under the other, on one page.
    later.forEach((drawing) => {
      close(true)
      items.push({ kind: 'figure', x: 0, y: 0, drawing, node })
      height = drawing.height
    })
    if (later.length > 0) close()
  }
  close()
  return rows
}

function stripOf(part: Part, bar: Bar, stretch: BarStretch, { fonts, style }: LayoutContext): Drawing {
  const strokeRow = part.stroke !== 'pluck'
  return drawStrip({ part, bar, fonts, ...stretch, strokeRow, style: stripStyle(style.minTextPt) }).drawing
}
