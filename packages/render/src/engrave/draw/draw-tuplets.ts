import { LINE, MOVE } from '../../drawing/drawing.ts'
import { glyphs, outline } from '../../drawing/shapes.ts'
import { tupletChain, type WrittenTuplet } from '../rhythm/written-tuplet.ts'
import type { BeamLine } from './beam-line.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

const SIZE = 3.2

interface Members {
  readonly tuplet: WrittenTuplet
  readonly columns: PlacedColumn[]
  /** How deep it stands in others, and whether others stand in it. */
  readonly depth: number
  holds: boolean
}

/**
 * Draws the figure of each tuplet over or under its middle, with a bracket where no beam shows the group or others stand inside it; inner ones
 * nearer to the notes.
 */
export function drawTuplets(
  plan: SystemPlan,
  columns: readonly PlacedColumn[],
  beams: readonly BeamLine[],
  sketch: Sketch,
): void {
  const groups = new Map<string, Members>()
  for (const placed of columns) {
    const chain = tupletChain(placed.column.written.tuplet)
    chain.forEach((tuplet, depth) => {
      const key = `${placed.column.bar.number}:${tuplet.at}:${depth}`
      const group = groups.get(key) ?? { tuplet, columns: [], depth, holds: false }
      group.columns.push(placed)
      group.holds ||= depth < chain.length - 1
      groups.set(key, group)
    })
  }
  for (const members of [...groups.values()].sort((a, b) => b.depth - a.depth)) drawTuplet(members, beams, plan, sketch)
}

function drawTuplet(
  { tuplet, columns: members, holds }: Members,
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
  if (beam !== undefined && !holds) return
  const hook = above ? 0.7 : -0.7
  const gap = (ink.right - ink.left) / 2 + 0.35
  const arms = [
    ...[MOVE, left, centre + hook, LINE, left, centre, LINE, Math.max(left, middle - gap), centre],
    ...[MOVE, Math.min(right, middle + gap), centre, LINE, right, centre, LINE, right, centre + hook],
  ]
  sketch.bar(bar, outline('tuplet', arms, 0.14))
}
