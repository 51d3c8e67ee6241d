import { beamCount } from '../rhythm/note-value.ts'
import type { PlacedColumn } from './plan.ts'

/** A beam: the outer edge of its first line as a straight line through the stems. Staff spaces. */
export interface BeamLine {
  readonly columns: readonly PlacedColumn[]
  readonly stem: 'up' | 'down'
  yAt(x: number): number
}

/** Least stems by the number of beams. Common practice: an octave, and more for a third and fourth beam. */
const STEMS = [3.5, 3.5, 3.5, 4.25, 5, 5.75]

/** The head next to the beam. */
function inner({ column }: PlacedColumn): number {
  return column.stem === 'up' ? (column.heads[0]?.y ?? 2) : (column.heads.at(-1)?.y ?? 2)
}

/**
 * The beam over a group: level for repeated or hollow shapes, else gently sloped by half the way between its ends and at most one space;
 * every stem at least an octave, reaching the middle line.
 */
export function beamLine(columns: readonly PlacedColumn[]): BeamLine {
  const stem = columns[0]?.column.stem ?? 'down'
  const way = stem === 'down' ? 1 : -1
  const first = columns[0]
  const last = columns.at(-1)
  const x0 = first?.cx ?? 0
  const x1 = last?.cx ?? 1
  const rise = slopeOf(columns, x1 - x0)
  const slope = x1 > x0 ? rise / (x1 - x0) : 0
  const beams = Math.max(...columns.map(({ column }) => beamCount(column.written.value)))
  const least = STEMS[beams] ?? 3.5
  const needed = columns.map((placed) => {
    const tip = inner(placed) + way * least
    const reached = stem === 'down' ? Math.max(tip, 2 + (beams - 1) * 0.75) : Math.min(tip, 2 - (beams - 1) * 0.75)
    return reached - slope * (placed.cx - x0)
  })
  let y = stem === 'down' ? Math.max(...needed) : Math.min(...needed)
  if (slope === 0 && y > -0.5 && y < 4.5) y = clearOfWedge(y, way)
  return { columns, stem, yAt: (x) => y + slope * (x - x0) }
}

/** Moves a level beam outward to where it sits on, straddles or hangs from a staff line. */
function clearOfWedge(y: number, way: number): number {
  const part = (((y * way) % 1) + 1) % 1
  return part > 0.5 ? y + way * (1 - part) : y
}

function slopeOf(columns: readonly PlacedColumn[], length: number): number {
  const ys = columns.map(inner)
  const [from, to] = [ys[0] ?? 0, ys.at(-1) ?? 0]
  const way = columns[0]?.column.stem === 'up' ? -1 : 1
  const nearest = Math.max(...ys.map((y) => y * way))
  const ends = Math.max(from * way, to * way)
  const steady = ys.every((y, i) => i === 0 || (y - (ys[i - 1] ?? 0)) * Math.sign(to - from) >= 0)
  if (from === to || nearest > ends || !steady || columns.some(({ column }) => column.kind === 'scratch')) return 0
  const rise = Math.min(Math.abs(to - from) / 2, 1, length * 0.12)
  return Math.sign(to - from) * rise
}
