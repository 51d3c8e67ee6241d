import type { DrawnItem } from '../../drawing/drawing.ts'
import { cross, glyphs, line, swell } from '../../drawing/shapes.ts'
import { isSlidInto, isUnstruck, strikeOf } from '../layout/column.ts'
import { brackets, rollItems, slideLine } from './draw-heads.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** A stretch of a tab line left out under a figure. */
export interface Hole {
  readonly string: number
  readonly left: number
  readonly right: number
}

/** Where the tab stands: its top line, the distance of its lines, and the base line of the labels over it. */
export interface TabPlace {
  readonly top: number
  readonly space: number
  readonly labelY: number
}

const PAD = 0.14

/** Draws figures, crosses, arcs, slides and labels of the tab. Returns the holes that its lines leave. */
export function drawTab(
  plan: SystemPlan,
  columns: readonly PlacedColumn[],
  place: TabPlace,
  sketch: Sketch,
): readonly Hole[] {
  const holes: Hole[] = []
  columns.forEach((placed, i) => {
    holes.push(...drawColumn(placed, plan, place, sketch))
    const next = columns[i + 1]
    drawFingers(placed, next, plan, place, sketch)
    if (next !== undefined && isUnstruck(next.column))
      holes.push(...drawMove(figureOf(columns, i), next, plan, place, sketch))
    if (i === 0 && isUnstruck(placed.column)) drawLabel(placed, placed.cx - 0.9, plan, place, sketch)
  })
  return holes
}

/** The column that prints the figures of what sounds in column `index`: that where it begins, if this system holds it. */
function figureOf(columns: readonly PlacedColumn[], index: number): PlacedColumn {
  let at = index
  while (at > 0 && columns[at]?.column.written.tiedIn === true) at -= 1
  return columns[at] as PlacedColumn
}

function yOf(string: number, place: TabPlace): number {
  return place.top + (string - 1) * place.space
}

function drawColumn(placed: PlacedColumn, plan: SystemPlan, place: TabPlace, sketch: Sketch): readonly Hole[] {
  const { column, cx } = placed
  const { style, fonts } = plan
  const holes: Hole[] = []
  const put = (...items: readonly DrawnItem[]): void => sketch.slot(column.bar.number, column.written.eventAt, ...items)
  const { figures, crosses, bracketed } = column.tab
  const drop = fonts.measure('sans-semibold', style.figure, '0')
  const baseline = -(drop.top + drop.bottom) / 2
  for (const { string, text } of figures) {
    const y = yOf(string, place)
    const ink = fonts.measure('sans-semibold', style.figure, text)
    put(glyphs('tab-figure', 'sans-semibold', style.figure, text, { x: cx - ink.width / 2, y: y + baseline }))
    holes.push({ string, left: cx - ink.width / 2 - PAD, right: cx + ink.width / 2 + PAD })
  }
  for (const string of crosses) {
    put(cross('tab-scratch', { x: cx, y: yOf(string, place), armX: 0.34, armY: 0.34 }, 0.15))
    holes.push({ string, left: cx - 0.48, right: cx + 0.48 })
  }
  const strings = [...figures.map(({ string }) => string), ...crosses]
  if (strings.length === 0) return holes
  const [high, low] = [yOf(Math.min(...strings), place), yOf(Math.max(...strings), place)]
  const half = column.tab.half
  if (bracketed) {
    put(...brackets(cx - half - 0.26, cx + half + 0.26, high - place.space * 0.42, low + place.space * 0.42))
    for (const string of strings) holes.push({ string, left: cx - half - 0.75, right: cx + half + 0.75 })
  }
  const strike = strikeOf(column)
  if (strike === null || column.written.tiedIn) return holes
  if (strike.rolled && strings.length > 1) {
    const x = cx - half - 0.75
    put(...rollItems(x, high - 0.3, low + 0.3, strike.stroke === 'up'))
    for (const string of strings) holes.push({ string, left: x - 0.5, right: x + 0.5 })
  }
  if (isSlidInto(column)) {
    const right = cx - half - 0.2 - (bracketed ? 0.6 : 0)
    for (const note of strike.notes) {
      put(
        slideLine(
          right - 1,
          right,
          yOf(note.string, place),
          note.fromFret === null || note.fret === null || note.fromFret <= note.fret,
        ),
      )
      holes.push({ string: note.string, left: right - 1.1, right: right + 0.15 })
    }
    drawLabel(
      placed,
      right - 0.05 - plan.fonts.measure('sans-italic', style.label, 'sl.').width / 2,
      plan,
      place,
      sketch,
    )
  }
  if (strike.marks.includes('slide-off')) {
    for (const { string } of figures) {
      const y = yOf(string, place)
      put(line('slide', { x1: cx + half + 0.2, y1: y - 0.24, x2: cx + half + 1.3, y2: y + 0.24 }, 0.15))
      holes.push({ string, left: cx + half + 0.1, right: cx + half + 1.4 })
    }
  }
  return holes
}

/**
 * Finger numbers at the lower right of the figures of single notes: shapes show theirs in their grids. Where the note
 * slides on or away the line takes the place, and the steps tell the finger.
 */
function drawFingers(
  placed: PlacedColumn,
  next: PlacedColumn | undefined,
  plan: SystemPlan,
  place: TabPlace,
  sketch: Sketch,
): void {
  const { style, fonts } = plan
  const strike = strikeOf(placed.column)
  const size = style.finger
  if (size === null || strike === null || strike.target.shape !== null || placed.column.written.tiedIn) return
  if (strike.marks.includes('slide-off') || (next !== undefined && strikeOf(next.column)?.technique === 'slide')) return
  const { figures, bracketed, half } = placed.column.tab
  const width = (text: string): number => fonts.measure('sans-semibold', style.figure, text).width
  for (const { string, text } of figures) {
    const note = strike.notes.find((candidate) => candidate.string === string)
    if (note?.finger == null || note.from === 'slid') continue
    const below = figures.find((figure) => figure.string === string + 1)
    if (below !== undefined && width(below.text) > width(text)) continue
    const finger = String(note.finger)
    const ink = fonts.measure('sans-semibold', size, finger)
    const middle = yOf(string, place) + place.space / 2
    sketch.slot(
      placed.column.bar.number,
      placed.column.written.eventAt,
      glyphs('finger', 'sans-semibold', size, finger, {
        x: placed.cx + (bracketed ? half + 0.5 : width(text) / 2) + 0.16,
        y: middle - (ink.top + ink.bottom) / 2,
      }),
    )
  }
}

/** Arc or line from each string that moves, and one label over all of them. */
function drawMove(
  from: PlacedColumn,
  to: PlacedColumn,
  plan: SystemPlan,
  place: TabPlace,
  sketch: Sketch,
): readonly Hole[] {
  const strike = strikeOf(to.column)
  if (strike === null) return []
  const holes: Hole[] = []
  const put = (...items: readonly DrawnItem[]): void =>
    sketch.slot(to.column.bar.number, to.column.written.eventAt, ...items)
  const width = (fret: number | null): number =>
    plan.fonts.measure('sans-semibold', plan.style.figure, String(fret ?? '')).width / 2
  for (const note of strike.notes) {
    if (note.from === 'held' || note.from === 'dead') continue
    const y = yOf(note.string, place)
    if (note.from === 'slid') {
      const [x1, x2] = [from.cx + width(note.fromFret) + 0.24, to.cx - width(note.fret) - 0.24]
      const tilt = (note.fret ?? 0) > (note.fromFret ?? 0) ? 0.28 : -0.28
      put(line('slide', { x1, y1: y + tilt, x2, y2: y - tilt }, 0.14))
      holes.push({ string: note.string, left: x1 - 0.16, right: x2 + 0.16 })
    } else {
      put(
        swell(
          'slur',
          { x1: from.cx + 0.3, y1: y - 0.72, x2: to.cx - 0.25, y2: y - 0.72 },
          { height: -0.42, thickness: 0.2 },
        ),
      )
    }
  }
  drawLabel(to, (from.cx + to.cx) / 2, plan, place, sketch)
  return holes
}

const LABELS = { hammer: 'H', pull: 'P', slide: 'sl.' } as const

function drawLabel(placed: PlacedColumn, x: number, plan: SystemPlan, place: TabPlace, sketch: Sketch): void {
  const technique = strikeOf(placed.column)?.technique
  if (technique === undefined || technique === null) return
  const text = LABELS[technique]
  const size = plan.style.label
  const { width } = plan.fonts.measure('sans-italic', size, text)
  const { column } = placed
  sketch.slot(
    column.bar.number,
    column.written.eventAt,
    glyphs('tab-label', 'sans-italic', size, text, { x: x - width / 2, y: place.labelY }),
  )
}

/** Whether anything over the tab says how a note is reached. */
export function hasLabels(columns: readonly PlacedColumn[]): boolean {
  return columns.some(({ column }) => isUnstruck(column) || isSlidInto(column))
}

/** Whether an arc rises over the top line, so that labels must stand higher. */
export function arcsOverTop(columns: readonly PlacedColumn[]): boolean {
  return columns.some(
    ({ column }) =>
      isUnstruck(column) &&
      (strikeOf(column)?.notes ?? []).some(
        (note) => note.string === 1 && (note.from === 'hammered' || note.from === 'pulled'),
      ),
  )
}
