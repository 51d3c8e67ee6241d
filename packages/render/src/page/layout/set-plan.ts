import type { DrawnItem } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { setText } from '../../drawing/set-text.ts'
import { frame, line } from '../../drawing/shapes.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { type PracticePlan, practicePlan } from '../document/practice-plan.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { moveItems, type Row, row, stackRows } from './row.ts'
import { setSection } from './set-section.ts'
import { setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

const LADDER_WIDTH = pointsOf(50)
const CARE_WIDTH = pointsOf(41)
const GUTTER = pointsOf(6)

/** The practice plan on one piece: tempo ladder, what to loop, care. The care note always stands with it. */
export function setPlan(
  block: Extract<DocumentBlock, { kind: 'plan' }>,
  area: Area,
  context: LayoutContext,
  given: PracticePlan = practicePlan(context.lesson, block.part, context.words),
): readonly Row[] {
  const { words } = context
  const head = setSection(
    { title: block.title, anchor: null, tempo: null, about: words.warmUp(given.minutes) },
    area,
    context,
  )
  const { items, height } = planColumns(given, area, context)
  return [head, row(height, items, { before: pointsOf(1), after: pointsOf(4) })]
}

/** Ladder, loops and care side by side; on a narrow page the loops stand under the other two. */
function planColumns(
  plan: PracticePlan,
  area: Area,
  context: LayoutContext,
): { readonly items: readonly PageItem[]; readonly height: number } {
  const { words } = context
  const { parent } = area
  const middle = area.width - LADDER_WIDTH - CARE_WIDTH - 2 * GUTTER
  const hasLoops = plan.loops.length > 0
  const three = hasLoops && middle >= pointsOf(50)
  const right = area.width - LADDER_WIDTH - GUTTER
  const careWidth = three ? CARE_WIDTH : Math.min(pointsOf(100), right)
  const ladder = stackRows(setLadder(plan, { width: LADDER_WIDTH, parent }, context))
  const loops = hasLoops ? setLoops(plan, { width: three ? middle : area.width, parent }, context) : []
  const care = stackRows(setNote(words.care, words.careNote, { width: careWidth, parent }, context))
  const top = Math.max(ladder.height, care.height)
  const beside = stackRows(loops)
  if (three) {
    return {
      items: [
        ...ladder.items,
        ...moveItems(beside.items, LADDER_WIDTH + GUTTER, 0),
        ...moveItems(care.items, area.width - CARE_WIDTH, 0),
      ],
      height: Math.max(top, beside.height),
    }
  }
  const under = hasLoops ? top + pointsOf(3) : top
  return {
    items: [...ladder.items, ...moveItems(care.items, LADDER_WIDTH + GUTTER, 0), ...moveItems(beside.items, 0, under)],
    height: under + beside.height,
  }
}

function setNote(title: string, text: string, area: Area, context: LayoutContext): readonly Row[] {
  const { small } = context.style
  return [
    ...setParagraph([say(title, 'sans-bold', small.size)], { role: 'P', size: small }, area, context),
    ...setParagraph([say(text, 'sans', small.size)], { role: 'P', size: small, hyphenate: false }, area, context),
  ]
}

/** Rungs that climb, each with its tempo and a box to tick. */
function setLadder(plan: PracticePlan, area: Area, context: LayoutContext): readonly Row[] {
  const { fonts, words, style } = context
  const rungs = plan.ladderBpm
  const gap = pointsOf(1.2)
  const rung = (area.width - gap * (rungs.length - 1)) / rungs.length
  const climb = pointsOf(1.65)
  const box = pointsOf(3)
  const items: DrawnItem[] = rungs.flatMap((bpm, index) => {
    const x = index * (rung + gap)
    const top = (rungs.length - 1 - index) * climb
    const centre = x + rung / 2
    const figure = setText(
      String(bpm),
      { x: centre, y: top + 10.4 },
      { role: 'text', face: 'sans-semibold', size: style.small.size, align: 'centre' },
      fonts,
    )
    return [
      line('rule', { x1: x, y1: top + 0.7, x2: x + rung, y2: top + 0.7 }, pointsOf(0.5)),
      ...figure.runs,
      frame('rule', { x: centre - box / 2, y: top + 13.4, width: box, height: box }, 0.7),
    ]
  })
  const height = (rungs.length - 1) * climb + 13.4 + box + 1
  const node: StructNode = { role: 'Figure', parent: area.parent, alt: `${words.ladder}: ${rungs.join(', ')}.` }
  const small = style.small
  return [
    ...setParagraph([say(words.ladder, 'sans-bold', small.size)], { role: 'P', size: small }, area, context),
    row(
      height,
      [{ kind: 'figure', x: 0, y: 0, drawing: { kind: 'drawing', width: area.width, height, items }, node }],
      {
        before: 3,
        after: 5,
      },
    ),
    ...setParagraph([say(words.ladderHow, 'sans', small.size)], { role: 'P', size: small }, area, context),
  ]
}

/** Where to loop and why, as pairs of a bold place and a sentence. */
function setLoops(plan: PracticePlan, area: Area, context: LayoutContext): readonly Row[] {
  if (plan.loops.length === 0) return []
  const { small } = context.style
  const left = pointsOf(23)
  const title = setParagraph(
    [say(context.words.looping, 'sans-bold', small.size)],
    { role: 'P', size: small },
    area,
    context,
  )
  const pairs = plan.loops.map(({ where, why }) => {
    const place = stackRows(
      setParagraph(
        [say(where, 'sans-semibold', small.size)],
        { role: 'P', size: small },
        { ...area, width: left - 6 },
        context,
      ),
    )
    const reason = stackRows(
      setParagraph(
        [say(why, 'sans', small.size)],
        { role: 'P', size: small },
        { ...area, width: area.width - left },
        context,
      ),
    )
    return row(Math.max(place.height, reason.height), [...place.items, ...moveItems(reason.items, left, 0)], {
      before: 1.7,
    })
  })
  return [...title, ...pairs]
}
