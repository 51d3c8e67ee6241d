import { LINE, MOVE } from '../../drawing/drawing.ts'
import { glyphs, outline } from '../../drawing/shapes.ts'
import type { WrittenTuplet } from '../rhythm/write-rhythm.ts'
import type { BeamLine } from './beam-line.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

const SIZE = 3.2

/** Draws the figure of each tuplet over or under its middle, with a bracket where no beam shows the group. */
export function drawTuplets(
  plan: SystemPlan,
  columns: readonly PlacedColumn[],
  beams: readonly BeamLine[],
  sketch: Sketch,
): void {
  const groups = new Map<string, { tuplet: WrittenTuplet; columns: PlacedColumn[] }>()
  for (const placed of columns) {
    const { tuplet } = placed.column.written
    if (tuplet === null) continue
    const key = `${placed.column.bar.number}:${tuplet.at}`
    const group = groups.get(key) ?? { tuplet, columns: [] }
    group.columns.push(placed)
    groups.set(key, group)
  }
  for (const { tuplet, columns: members } of groups.values()) drawTuplet(tuplet, members, beams, plan, sketch)
}

function drawTuplet(
  tuplet: WrittenTuplet,
  members: readonly PlacedColumn[],
  beams: readonly BeamLine[],
  plan: SystemPlan,
  sketch: Sketch,
): void {
  const first = members[0]
  const last = members.at(-1)
  if (first === undefined || last === undefined) return
  const beam = beams.find(
    ({ columns }) => columns.length === members.length && columns.every((column, i) => column === members[i]),
  )
  const ups = members.filter(({ column }) => column.kind !== 'rest' && column.stem === 'up').length
  const downs = members.filter(({ column }) => column.kind !== 'rest' && column.stem === 'down').length
  const above = beam !== undefined ? beam.stem === 'up' : ups >= downs
  const digits = [...String(tuplet.parts)].map((digit) => String.fromCodePoint(0xe880 + Number(digit))).join('')
  const ink = plan.fonts.measure('music', SIZE, digits)
  const middle = (first.cx + last.cx) / 2
  const height = ink.bottom - ink.top
  const [left, right] = [first.cx - 0.65, last.cx + 0.65]
  const edge = above
    ? sketch.topOver(left, right, beam === undefined ? -0.4 : 4)
    : sketch.bottomUnder(left, right, beam === undefined ? 4.4 : 0)
  const centre = above ? edge - 0.35 - height / 2 : edge + 0.35 + height / 2
  const bar = first.column.bar.number
  sketch.bar(
    bar,
    glyphs('tuplet', 'music', SIZE, digits, {
      x: middle - (ink.left + ink.right) / 2,
      y: centre - (ink.top + ink.bottom) / 2,
    }),
  )
  if (beam !== undefined) return
  const hook = above ? 0.7 : -0.7
  const gap = (ink.right - ink.left) / 2 + 0.35
  const arms = [
    ...[MOVE, left, centre + hook, LINE, left, centre, LINE, Math.max(left, middle - gap), centre],
    ...[MOVE, Math.min(right, middle + gap), centre, LINE, right, centre, LINE, right, centre + hook],
  ]
  sketch.bar(bar, outline('tuplet', arms, 0.14))
}
