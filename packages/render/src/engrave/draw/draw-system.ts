import { boundsOf } from '../../drawing/bounds.ts'
import type { Drawing, DrawnItem } from '../../drawing/drawing.ts'
import { translateAndScale } from '../../drawing/place.ts'
import { drawAbove, type RowsAbove } from './draw-above.ts'
import { drawRowsBelow, type RowsBelow } from './draw-below.ts'
import { drawStaff, drawTabFrame } from './draw-frame.ts'
import { drawHeads } from './draw-heads.ts'
import { drawRuns, runRowHeight, runRows } from './draw-runs.ts'
import { drawStems } from './draw-stems.ts'
import { arcsOverTop, drawTab, hasLabels } from './draw-tab.ts'
import { drawTies } from './draw-ties.ts'
import { drawTuplets } from './draw-tuplets.ts'
import { placedColumns, type SystemPlan } from './plan.ts'
import { createSketch } from './sketch.ts'

/** A finished system in points: y from the top of its drawing. */
export interface DrawnSystem {
  readonly drawing: Drawing
  /** Left edge of the staff in the drawing: 0 unless something hangs out on the left. */
  readonly staffLeft: number
  readonly staffTop: number
  readonly staffBottom: number
  readonly tabTop: number
  readonly tabBottom: number
  readonly tabSpace: number
  /** Centre of every column by its bar and the tick at which it stands. */
  readonly columns: readonly { readonly bar: number; readonly at: number; readonly x: number }[]
  /** Edges of every bar between its bar lines. */
  readonly bars: readonly { readonly bar: number; readonly left: number; readonly right: number }[]
}

/** The rows a system is drawn with, and the least distance of the tab from the staff, in staff spaces from the top line of the staff. */
export interface SystemRows {
  readonly above: RowsAbove
  readonly below: RowsBelow
}

/** Room that keeps the labels over the tab apart from a run above them. */
const LABEL_UNDER_RUN = 0.55

/** Draws a planned system, stacking each row on the ink of those before it, and converts it to points. */
export function drawSystem(plan: SystemPlan, rows: SystemRows): DrawnSystem {
  const { style, fonts, instrument } = plan
  const columns = placedColumns(plan)
  const sketch = createSketch(fonts)
  drawStaff(plan, sketch)
  const beams = drawStems(plan, columns, sketch)
  drawHeads(columns, beams, sketch)
  drawTies(plan, columns, sketch)
  drawTuplets(plan, columns, beams, sketch)
  const runs = runRows(plan, columns)
  const lift = arcsOverTop(columns) ? 0.9 : 0
  const labelled = runs.length > 0 && hasLabels(columns) ? LABEL_UNDER_RUN : 0
  const lowest = sketch.bottomUnder(4.2, plan.width, 4)
  const tabTop = Math.max(lowest + style.tabGap + lift + labelled + runs.length * runRowHeight(style), 8.3)
  const place = { top: tabTop, space: style.tabSpace, labelY: tabTop - style.labelRise - lift }
  const tabBottom = tabTop + (instrument.tuning.length - 1) * style.tabSpace
  drawAbove(plan, columns, rows.above, sketch)
  const holes = drawTab(plan, columns, place, sketch)
  drawRuns(runs, tabTop - style.tabGap - lift - labelled + 0.15, plan, sketch)
  drawTabFrame(plan, place, holes, sketch)
  const lowestBase = drawRowsBelow(plan, columns, tabBottom, rows.below, sketch)
  const items = sketch.items()
  return finish(plan, items, { tabTop, tabBottom, lowestBase, columns })
}

interface Finish {
  readonly tabTop: number
  readonly tabBottom: number
  readonly lowestBase: number
  readonly columns: ReturnType<typeof placedColumns>
}

function finish(
  plan: SystemPlan,
  items: readonly DrawnItem[],
  { tabTop, tabBottom, lowestBase, columns }: Finish,
): DrawnSystem {
  const unit = plan.style.staffSpacePt
  const bounds = boundsOf(items, plan.fonts) ?? { left: 0, right: 0, top: 0, bottom: 0 }
  const left = Math.max(0, -bounds.left - plan.style.lineWidth.bar / 2)
  const up = -bounds.top
  const y = (spaces: number): number => (spaces + up) * unit
  const x = (spaces: number): number => (spaces + left) * unit
  return {
    drawing: {
      kind: 'drawing',
      width: x(Math.max(plan.width, bounds.right)),
      height: y(Math.max(bounds.bottom, lowestBase, tabBottom)),
      items: translateAndScale(items, { dx: left, dy: up, factor: unit }),
    },
    staffLeft: x(0),
    staffTop: y(0),
    staffBottom: y(4),
    tabTop: y(tabTop),
    tabBottom: y(tabBottom),
    tabSpace: plan.style.tabSpace * unit,
    columns: columns.map(({ column, cx }) => ({ bar: column.bar.number, at: column.written.at, x: x(cx) })),
    bars: plan.pieces.map(({ piece, x: from, end }) => ({ bar: piece.bar.number, left: x(from), right: x(end) })),
  }
}
