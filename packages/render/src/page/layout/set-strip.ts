import type { Bar, BarRange, Part } from '@barwise/parser'
import type { Drawing } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { heardRhythm } from '../../steps/heard-rhythm.ts'
import { drawStrip } from '../../strip/draw-strip.ts'
import { type BarStretch, cutToFit } from '../../strip/middle-beat.ts'
import { stripStyle } from '../../strip/strip-style.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { type Row, row } from './row.ts'
import { BASE_OF_LEADING, lineItem } from './set-text.ts'
import { say } from './text-run.ts'

const GUTTER = pointsOf(4)

/** The strum strip alone, bar by bar, as many side by side as the width holds; one wider than that is cut at its middle beat. Bars that sound the same are shown once each time they are asked for. */
export function setStrips(
  strip: { readonly part: Part; readonly bars: BarRange | null },
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { part, bars } = strip
  const { style, lesson } = context
  const wanted = part.bars.filter((bar) =>
    bars === null ? bar.number === 0 || bar.sameAs === null : bar.number >= bars.from && bar.number <= bars.to,
  )
  const rows: Row[] = []
  let items: PageItem[] = []
  let [x, height] = [0, 0]
  const close = (): void => {
    if (items.length > 0) rows.push(row(height, items, { before: pointsOf(3), after: pointsOf(3) }))
    items = []
    ;[x, height] = [0, 0]
  }
  for (const bar of wanted) {
    const stretches = cutToFit(
      bar,
      { fromTicks: 0, toTicks: bar.length },
      (stretch) => stripOf(part, bar, stretch, context).width <= area.width,
    )
    const title = capital(context.words.bar(bar.number, bar.number))
    const node: StructNode = { role: 'Figure', parent: area.parent, alt: `${title}. ${heardRhythm(lesson, bar)}` }
    const { size, leading } = style.small
    stretches.forEach((stretch, index) => {
      const drawing = stripOf(part, bar, stretch, context)
      if (x > 0 && x + drawing.width > area.width) close()
      if (index === 0) {
        const at = { x, y: leading * BASE_OF_LEADING }
        const name = { role: 'P', parent: area.parent } as const
        items.push(lineItem([say(title, 'sans-semibold', size)], at, name, context).item)
      }
      items.push({ kind: 'figure', x, y: leading + 2, drawing, node })
      height = Math.max(height, leading + 2 + drawing.height)
      x += drawing.width + GUTTER
    })
  }
  close()
  return rows
}

function stripOf(part: Part, bar: Bar, stretch: BarStretch, { fonts, style }: LayoutContext): Drawing {
  const strokeRow = part.stroke !== 'pluck'
  return drawStrip({ part, bar, fonts, ...stretch, strokeRow, style: stripStyle(style.minTextPt) }).drawing
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
