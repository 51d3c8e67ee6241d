import type { BarRange, Part } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { stepsOfPart } from '../../steps/part-steps.ts'
import { drawStrip } from '../../strip/draw-strip.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { type Row, row } from './row.ts'
import { BASE_OF_LEADING, lineItem } from './set-text.ts'
import { say } from './text-run.ts'

const GUTTER = pointsOf(4)

/** The strum strip alone, bar by bar, as many side by side as the width holds. Bars that sound the same are shown once each time they are asked for. */
export function setStrips(
  strip: { readonly part: Part; readonly bars: BarRange | null },
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { part, bars } = strip
  const { fonts, style, lesson } = context
  const wanted = part.bars.filter((bar) =>
    bars === null ? bar.number === 0 || bar.sameAs === null : bar.number >= bars.from && bar.number <= bars.to,
  )
  const steps = new Map(stepsOfPart(lesson, part).cards.map((card) => [card.bar, card]))
  const rows: Row[] = []
  let items: PageItem[] = []
  let [x, height] = [0, 0]
  const close = (): void => {
    if (items.length > 0) rows.push(row(height, items, { before: pointsOf(3), after: pointsOf(3) }))
    items = []
    ;[x, height] = [0, 0]
  }
  for (const bar of wanted) {
    const { drawing } = drawStrip({ part, bar, fonts, strokeRow: part.stroke !== 'pluck' })
    if (x > 0 && x + drawing.width > area.width) close()
    const title = capital(context.words.bar(bar.number, bar.number))
    const rhythm = steps.get(bar.sameAs ?? bar.number)?.rhythm ?? title
    const node: StructNode = { role: 'Figure', parent: area.parent, alt: `${title}: ${rhythm}` }
    const label = lineItem(
      [say(title, 'sans-semibold', style.small.size)],
      { x, y: style.small.leading * BASE_OF_LEADING },
      { role: 'P', parent: area.parent },
      context,
    )
    items.push(label.item, { kind: 'figure', x, y: style.small.leading + 2, drawing, node })
    height = Math.max(height, style.small.leading + 2 + drawing.height)
    x += drawing.width + GUTTER
  }
  close()
  return rows
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
