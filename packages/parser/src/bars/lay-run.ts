import { type Grid, slotTicks, type Ticks } from '../score/time.ts'
import type { PlacedGroup, PlacedSign, Segment } from './draft.ts'
import type { RunItem } from './sign-run.ts'
import type { StrokeSign } from './stroke-sign.ts'

/** Signs and brackets that share a time evenly; `slots` counts what each takes. */
export type Cell = Exclude<RunItem, { readonly kind: 'beat-bar' }>

/** The stretch of the full bar that a run of cells fills. */
export interface RunFrame {
  readonly at: Ticks
  readonly length: Ticks
  /** Into how many equal slots the stretch is cut. */
  readonly slots: number
  readonly grid: Grid
}

type Swing = 'down' | 'up'

/**
 * Puts signs in time and says how the hand swings at each. What falls on the grid follows the grid: even slots of the bar
 * go down, odd ones up, on a quarter grid all go down. A cut or bracket that leaves it is a group: it starts with the stroke
 * of the place where it starts and alternates by part, but the last of an odd number of parts takes the opposite of the
 * first when the part before it is held or silent.
 *
 * The slots of the cells must add up to those of the frame, and every time must come out whole.
 */
export function layRun(
  cells: readonly Cell[],
  frame: RunFrame,
): { readonly signs: readonly PlacedSign[]; readonly groups: readonly PlacedGroup[] } {
  const signs: PlacedSign[] = []
  const groups: PlacedGroup[] = []
  const slot = frame.length / frame.slots
  const leaves = leavesGrid(frame.at, slot, frame.slots, frame.grid)
  if (leaves) groups.push({ at: frame.at, length: frame.length, parts: frame.slots })
  const first = gridSwing(frame.at, frame.grid)
  let part = 0
  let before: StrokeSign | null = null
  for (const cell of cells) {
    const at = frame.at + part * slot
    const swing = leaves ? partSwing(first, part, { parts: frame.slots, before }) : gridSwing(at, frame.grid)
    if (cell.kind === 'sign') signs.push(place(cell.signs[0], at, slot, swing))
    else layBracket(cell, { at, length: cell.slots * slot, swing, grid: frame.grid }, { signs, groups })
    part += cell.slots
    before = cell.signs.at(-1) ?? null
  }
  return { signs, groups }
}

function layBracket(
  cell: Cell,
  frame: { readonly at: Ticks; readonly length: Ticks; readonly swing: Swing; readonly grid: Grid },
  into: { readonly signs: PlacedSign[]; readonly groups: PlacedGroup[] },
): void {
  const parts = cell.signs.length
  const length = frame.length / parts
  const leaves = leavesGrid(frame.at, length, parts, frame.grid)
  if (leaves && parts > 1) into.groups.push({ at: frame.at, length: frame.length, parts })
  cell.signs.forEach((sign, part) => {
    const at = frame.at + part * length
    const before = cell.signs[part - 1] ?? null
    const swing = leaves ? partSwing(frame.swing, part, { parts, before }) : gridSwing(at, frame.grid)
    into.signs.push(place(sign, at, length, swing))
  })
}

function place(sign: StrokeSign, at: Ticks, duration: Ticks, swing: Swing): PlacedSign {
  return { sign, at, duration, swing, copy: null, origin: null }
}

function leavesGrid(at: Ticks, length: Ticks, parts: number, grid: Grid): boolean {
  const slot = slotTicks(grid)
  return at % slot !== 0 || (parts > 0 && length % slot !== 0)
}

function gridSwing(at: Ticks, grid: Grid): Swing {
  return grid === 4 || Math.floor(at / slotTicks(grid)) % 2 === 0 ? 'down' : 'up'
}

function partSwing(
  first: Swing,
  part: number,
  { parts, before }: { readonly parts: number; readonly before: StrokeSign | null },
): Swing {
  const other: Swing = first === 'down' ? 'up' : 'down'
  const quietBefore = before !== null && (before.meaning.kind === 'hold' || before.meaning.kind === 'silence')
  if (parts % 2 === 1 && part === parts - 1 && part > 0 && quietBefore) return other
  return part % 2 === 0 ? first : other
}

/**
 * Takes a run apart into the smallest stretches of whole beats that no sign, bracket or group crosses.
 *
 * @param beats the first and last beat of the run, and the ticks of one.
 */
export function splitBeats(
  run: { readonly signs: readonly PlacedSign[]; readonly groups: readonly PlacedGroup[] },
  beats: { readonly first: number; readonly last: number; readonly ticks: Ticks },
): readonly Segment[] {
  const segments: Segment[] = []
  let firstBeat = beats.first
  for (let beat = beats.first; beat <= beats.last; beat++) {
    const edge = beat * beats.ticks
    const crossed =
      run.signs.some((sign) => sign.at < edge && sign.at + sign.duration > edge) ||
      run.groups.some((group) => group.at < edge && group.at + group.length > edge)
    if (crossed && beat < beats.last) continue
    const from = (firstBeat - 1) * beats.ticks
    segments.push({
      firstBeat,
      lastBeat: beat,
      signs: run.signs.filter((sign) => sign.at >= from && sign.at < edge),
      groups: run.groups.filter((group) => group.at >= from && group.at < edge),
    })
    firstBeat = beat + 1
  }
  return segments
}
