import { pointsOf } from '../../drawing/lengths.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { type PracticePlan, practicePlan } from '../document/practice-plan.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { textHeight } from './page-frame.ts'
import { keepTogether, moveItems, type Row, row, rowsHeight, spaceRows, stackRows } from './row.ts'
import { setSection } from './set-section.ts'
import { setParagraph } from './set-text.ts'
import { tempoLadder } from './tempo-ladder.ts'
import { say } from './text-run.ts'

const LADDER_WIDTH = pointsOf(50)
const CARE_WIDTH = pointsOf(41)
const GUTTER = pointsOf(6)

/** The practice plan in one piece: tempo ladder, what to loop, care. The care note always stands with it. */
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
  if (context.style.large) {
    const rows = spaceRows(planColumn(given, area, context), pointsOf(4), pointsOf(6))
    const whole = rowsHeight([head, ...rows]) <= textHeight(context.style)
    return whole ? keepTogether([head, ...rows]) : [head, ...rows]
  }
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
function setLadder(plan: PracticePlan, area: Area, context: LayoutContext, width: number = area.width): readonly Row[] {
  const { fonts, words, style } = context
  const { small } = style
  const rungs = plan.ladderBpm
  const drawing = tempoLadder(rungs, { width, size: small.size, fonts })
  const node: StructNode = { role: 'Figure', parent: area.parent, alt: `${words.ladder}: ${rungs.join(', ')}.` }
  const figure = { kind: 'figure', x: 0, y: 0, drawing, node } as const
  return [
    ...setParagraph([say(words.ladder, 'sans-bold', small.size)], { role: 'P', size: small }, area, context),
    row(drawing.height, [figure], { before: 3 * style.ease, after: 5 * style.ease }),
    ...setParagraph([say(words.ladderHow, 'sans', small.size)], { role: 'P', size: small }, area, context),
  ]
}

/** The widest rung of large print, in points. */
const LARGE_RUNG = pointsOf(22)

/** The plan of large print in one column; together where it fits a page. */
function planColumn(plan: PracticePlan, area: Area, context: LayoutContext): readonly Row[] {
  const { words, style } = context
  const { small } = style
  const width = Math.min(area.width, LARGE_RUNG * plan.ladderBpm.length)
  const places = plan.loops.map(({ where, why }) => {
    const runs = [
      say(`${where.replaceAll(' ', '\u00a0')}\u2002`, 'sans-bold', small.size),
      say(why, 'sans', small.size),
    ]
    return spaceRows(setParagraph(runs, { role: 'P', size: small }, area, context), small.leading * 0.25, 0)
  })
  const title = setParagraph([say(words.looping, 'sans-bold', small.size)], { role: 'P', size: small }, area, context)
  const loops = places.length === 0 ? [] : [...title, ...places.flat()]
  const groups = [setLadder(plan, area, context, width), loops, setNote(words.care, words.careNote, area, context)]
  return groups
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) => spaceRows(keepTogether(rows), index === 0 ? 0 : small.leading * 0.75, 0))
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
