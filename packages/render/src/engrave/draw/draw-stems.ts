import { glyphs, line, polygon } from '../../drawing/shapes.ts'
import { beatAt, metreShape } from '../rhythm/metre-shape.ts'
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
  const bar = beam.columns[0]?.column.bar.number ?? 0
  const strip = (left: number, right: number, level: number): void => {
    const shift = way * (level - 1) * pitch
    const [a, b] = [beam.yAt(left) + shift, beam.yAt(right) + shift]
    sketch.bar(bar, polygon('beam', [left, a, right, b, right, b + way * thickness, left, a + way * thickness]))
  }
  const deepest = Math.max(...beam.columns.map(({ column }) => beamCount(column.written.value)))
  for (let level = 1; level <= deepest; level += 1) {
    for (const run of runsAt(beam.columns, level, deepest)) {
      const first = run[0]
      const last = run.at(-1)
      if (first === undefined || last === undefined) continue
      if (run.length > 1) strip(stemX(first) - half, stemX(last) + half, level)
      else if (hooksRight(first, beam)) strip(stemX(first) - half, stemX(first) + HOOK, level)
      else strip(stemX(first) - HOOK, stemX(first) + half, level)
    }
  }
}

/** Neighbours that share a beam of a level; with 32nds the inner beams break at the half beat, so that it shows. */
function runsAt(
  columns: readonly PlacedColumn[],
  level: number,
  deepest: number,
): readonly (readonly PlacedColumn[])[] {
  const runs: PlacedColumn[][] = []
  let run: PlacedColumn[] = []
  let half = -1
  for (const placed of columns) {
    const own = deepest >= 3 && level >= 2 ? halfBeat(placed) : 0
    if (beamCount(placed.column.written.value) < level || own !== half) {
      if (run.length > 0) runs.push(run)
      run = []
    }
    half = own
    if (beamCount(placed.column.written.value) >= level) run.push(placed)
  }
  if (run.length > 0) runs.push(run)
  return runs
}

function halfBeat({ column }: PlacedColumn): number {
  if (column.written.tuplet !== null) return 0
  const beat = beatAt(metreShape(column.bar.metre), column.written.at)
  const length = beat.to - beat.from
  return Math.floor(((column.written.at - beat.from) * (length % 9 === 0 ? 3 : 2)) / length)
}

function hooksRight(placed: PlacedColumn, beam: BeamLine): boolean {
  if (placed === beam.columns[0]) return true
  if (placed === beam.columns.at(-1)) return false
  return placed.column.written.at % (2 * placed.column.written.ticks) === 0
}
