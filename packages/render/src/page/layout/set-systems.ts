import type { BarRange, Part } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { trueSigns } from '../../drawing/true-signs.ts'
import { engravePart } from '../../engrave/engrave-part.ts'
import { barAnchor } from '../document/anchors.ts'
import type { BarChords } from '../document/page-words.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { StructNode } from './page-content.ts'
import { type Row, row } from './row.ts'

/** The play-through: each system a row, never cut. The first stays with the head above it. */
export function setSystems(
  music: {
    readonly part: Part
    readonly bars: BarRange | null
    readonly anchors: boolean
  },
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { lesson, fonts, style, lessonId } = context
  const { part } = music
  const { systems, findings } = engravePart({
    lesson,
    part,
    fonts,
    widthPt: area.width,
    staffSpacePt: style.staffSpace,
    minTextPt: style.minTextPt,
    // The head of the part says it.
    firstTempo: false,
    ...(music.bars === null ? {} : { bars: music.bars }),
  })
  findings.forEach(context.report)
  return systems.map((system, index) => {
    const node: StructNode = {
      role: 'Figure',
      parent: area.parent,
      alt: context.words.systems(
        part.title,
        { from: Math.max(1, system.firstBar), to: Math.max(1, system.lastBar) },
        chordsOf(part, system.firstBar, system.lastBar),
      ),
    }
    const anchors = music.anchors
      ? // A bar is told in its card, where it has one.
        system.bars.map(
          ({ bar }) => ({ kind: 'anchor', y: 0, name: barAnchor(lessonId, part, bar), yields: true }) as const,
        )
      : []
    return row(
      system.drawing.height,
      [...anchors, { kind: 'figure', x: -system.staffLeft, y: 0, drawing: system.drawing, node }],
      { before: pointsOf(3.2) * style.ease, after: index === systems.length - 1 ? pointsOf(3.6) * style.ease : 0 },
    )
  })
}

/** The symbols that begin in some bars, bar by bar; bars without any are left out. */
function chordsOf(part: Part, from: number, to: number): readonly BarChords[] {
  return part.bars
    .filter((bar) => bar.number >= from && bar.number <= to && bar.chords.length > 0)
    .map((bar) => ({
      bar: bar.number,
      symbols: bar.chords.map(({ symbol }) => (symbol === null ? null : trueSigns(symbol))),
    }))
}
