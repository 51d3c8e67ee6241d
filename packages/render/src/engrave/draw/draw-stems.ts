import { glyphs, line, polygon } from '../../drawing/shapes.ts'
import { beamRuns, hooksRight } from '../rhythm/beam-groups.ts'
import { beamCount } from '../rhythm/note-value.ts'
import { type BeamLine, beamLine } from './beam-line.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** Half the arm of a scratch cross. */
export const CROSS_ARM = 0.42
const FLAGS = { up: [0xe240, 0xe242, 0xe244, 0xe246, 0xe248], down: [0xe241, 0xe243, 0xe245, 0xe247, 0xe249] } as const
/** Length of a beam that belongs to one note only. */
const HOOK = 1.05

/** Where the stem of a column stands. */
export function stemX({ column, cx }: PlacedColumn): number {
  if (column.stamp === null) return column.stem === 'down' ? cx - CROSS_ARM : cx + CROSS_ARM
  return cx - column.stamp.headWidth / 2 + column.stamp.stemX
}

/** Draws beams with their stems, and the stems and flags of single scratches. Returns the beams, for what must keep clear of them. */
export function drawStems(plan: SystemPlan, columns: readonly PlacedColumn[], sketch: Sketch): readonly BeamLine[] {
  const lines: BeamLine[] = []
  for (const placed of plan.pieces) {
    for (const group of placed.piece.built.beams) {
      const members = group.columns.flatMap((column) => columns.find((candidate) => candidate.column === column) ?? [])
      const beam = beamLine(members)
      lines.push(beam)
      for (const member of members) drawStem(member, beam.yAt(stemX(member)), plan, sketch)
      drawBeams(beam, plan, sketch)
    }
  }
  for (const placed of columns) {
    if (placed.column.kind === 'scratch' && !placed.column.beamed) drawScratchStem(placed, plan, sketch)
  }
  return lines
}

function drawStem(placed: PlacedColumn, tip: number, plan: SystemPlan, sketch: Sketch): void {
  const { column } = placed
  const x = stemX(placed)
  const cross = column.kind === 'scratch'
  const start =
    column.stem === 'down'
      ? (column.heads[0]?.y ?? 2) + (cross ? -0.38 : 0.16)
      : (column.heads.at(-1)?.y ?? 2) + (cross ? 0.38 : -0.16)
  const end = tip + (column.stem === 'down' ? -0.02 : 0.02)
  sketch.slot(
    column.bar.number,
    column.written.eventAt,
    line('stem', { x1: x, y1: start, x2: x, y2: end }, plan.style.lineWidth.stem),
  )
}

function drawScratchStem(placed: PlacedColumn, plan: SystemPlan, sketch: Sketch): void {
  const { column } = placed
  if (column.written.value.base === 1) return
  const way = column.stem === 'down' ? 1 : -1
  const nearest = column.stem === 'down' ? (column.heads.at(-1)?.y ?? 2) : (column.heads[0]?.y ?? 2)
  const count = beamCount(column.written.value)
  const tip = nearest + way * (3.4 + Math.max(0, count - 2) * 0.75)
  drawStem(placed, tip, plan, sketch)
  const flag = FLAGS[column.stem][count - 1]
  if (flag === undefined) return
  const x = stemX(placed) - plan.style.lineWidth.stem / 2
  sketch.slot(
    column.bar.number,
    column.written.eventAt,
    glyphs('flag', 'music', 4, String.fromCodePoint(flag), { x, y: tip }),
  )
}

function drawBeams(beam: BeamLine, plan: SystemPlan, sketch: Sketch): void {
  const { thickness, pitch } = plan.style.beam
  const way = beam.stem === 'down' ? -1 : 1
  const half = plan.style.lineWidth.stem / 2
  const bar = beam.columns[0]?.column.bar
  if (bar === undefined) return
  const strip = (left: number, right: number, level: number): void => {
    const shift = way * (level - 1) * pitch
    const [a, b] = [beam.yAt(left) + shift, beam.yAt(right) + shift]
    sketch.bar(bar.number, polygon('beam', [left, a, right, b, right, b + way * thickness, left, a + way * thickness]))
  }
  const group = beam.columns.map(({ column }) => column.written)
  const deepest = Math.max(...group.map(({ value }) => beamCount(value)))
  for (let level = 1; level <= deepest; level += 1) {
    for (const run of beamRuns(group, level, bar.metre)) {
      const first = beam.columns.find(({ column }) => column.written === run[0])
      const last = beam.columns.find(({ column }) => column.written === run.at(-1))
      if (first === undefined || last === undefined) continue
      if (run.length > 1) strip(stemX(first) - half, stemX(last) + half, level)
      else if (hooksRight(first.column.written, group)) strip(stemX(first) - half, stemX(first) + HOOK, level)
      else strip(stemX(first) - HOOK, stemX(first) + half, level)
    }
  }
}
