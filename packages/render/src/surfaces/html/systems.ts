import type { BarRange, Part } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { engravePart } from '../../engrave/engrave-part.ts'
import { fitted } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** Staff and tab of some bars, engraved twice: for a wide column, and anew for a phone. The style sheet shows the one that fits. */
export function systemsFigure(part: Part, bars: BarRange | null, context: PageContext): Element {
  const settings = (['wide', 'narrow'] as const).map((setting) => systemsAt(setting, part, bars, context))
  return h('div', { className: ['systems'], dataPart: part.id }, ...settings)
}

function systemsAt(setting: 'wide' | 'narrow', part: Part, bars: BarRange | null, context: PageContext): Element {
  const { systemsPt, staffSpacePt } = context.screen[setting]
  const { systems } = engravePart({
    lesson: context.lesson,
    part,
    fonts: context.fonts,
    widthPt: systemsPt,
    staffSpacePt,
    minTextPt: context.screen.minTextPt,
    firstTempo: false,
    ...(bars === null ? {} : { bars }),
  })
  const figures = systems.map(({ drawing, firstBar, lastBar }) => {
    context.drawings.push(drawing)
    const label = context.web.systems(firstBar, lastBar)
    return fitted(drawingNode(drawing, label, context.fonts), drawing, systemsPt)
  })
  return el('div', setting, figures)
}
