import { LINE, MOVE } from '../../drawing/drawing.ts'
import { glyphs, line, outline } from '../../drawing/shapes.ts'
import type { EngraveStyle } from '../style.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** A stretch under one sign: let ring or palm mute. */
interface Run {
  readonly kind: 'let-ring' | 'palm-mute'
  readonly bar: number
  readonly left: number
  readonly right: number
}

const WORDS = { 'let-ring': 'let ring', 'palm-mute': 'P.M.' } as const
/** From the word to its dashes, the shortest dashes, and how far left of its first note a word may begin. */
const WORD_GAP = 0.45
const LEAST_DASHES = 0.65
const EARLIEST = 1.6
/** Height of one row of such signs in staff spaces. */
export function runRowHeight({ label }: EngraveStyle): number {
  return Math.max(1.75, label * 1.12)
}

/** The runs of a system in rows that do not overlap: one run, one sign. */
export function runRows(plan: SystemPlan, columns: readonly PlacedColumn[]): readonly (readonly Run[])[] {
  const runs = [...runsOf('palm-mute', columns, plan), ...runsOf('let-ring', columns, plan)]
  const rows: Run[][] = []
  for (const run of runs) {
    const width = plan.fonts.measure('sans-italic', plan.style.label, WORDS[run.kind]).width
    const left = wordLeft(run, width, columns)
    const right = Math.max(run.right, left + width)
    const row = rows.find((candidate) =>
      candidate.every((other) => other.right + 0.5 < left || other.left > right + 0.5),
    )
    const own = { ...run, left, right }
    if (row === undefined) rows.push([own])
    else row.push(own)
  }
  return rows
}

/** Where the word of a run begins: at its first note, or so much earlier that dashes and hook still show where it ends. */
function wordLeft(run: Run, width: number, columns: readonly PlacedColumn[]): number {
  const wanted = run.right - width - WORD_GAP - LEAST_DASHES
  const before = columns.findLast(({ cx }) => cx < run.left)
  const free = before === undefined ? run.left - EARLIEST : before.cx + before.column.right + 0.5
  return Math.min(run.left, Math.max(wanted, run.left - EARLIEST, free))
}

function runsOf(kind: Run['kind'], columns: readonly PlacedColumn[], plan: SystemPlan): readonly Run[] {
  const runs: Run[] = []
  let open: { bar: number; left: number; right: number; until: number } | null = null
  columns.forEach((placed, i) => {
    const { column, cx } = placed
    const { event, at, ticks } = column.written
    const start = column.bar.start + at
    const covered =
      event.kind !== 'rest' &&
      (kind === 'palm-mute' ? event.palmMuted : event.kind === 'strike' && event.marks.includes('ring'))
    const rings = open !== null && kind === 'let-ring' && start < open.until && event.kind !== 'rest'
    if (!covered && !rings) {
      if (open !== null) runs.push({ kind, bar: open.bar, left: open.left, right: open.right })
      open = null
      return
    }
    const next = columns[i + 1]
    const right =
      kind === 'let-ring'
        ? next === undefined
          ? plan.width - 0.3
          : Math.max(cx + 0.6, next.cx - next.column.left - 0.35)
        : cx + 0.6
    const ringing = event.kind === 'strike' ? Math.max(0, ...event.notes.map((note) => note.ringsTo ?? 0)) : 0
    const until = Math.max(open?.until ?? 0, column.bar.start + ringing, start + ticks)
    open = {
      bar: open?.bar ?? column.bar.number,
      left: open?.left ?? cx - 0.6,
      right,
      until: covered ? until : (open?.until ?? 0),
    }
  })
  const rest = open as { bar: number; left: number; right: number } | null
  if (rest !== null) runs.push({ kind, bar: rest.bar, left: rest.left, right: rest.right })
  return runs
}

/** Draws the rows with the base line of the first at `y`, each next one above it: word, dashes, hook. */
export function drawRuns(rows: readonly (readonly Run[])[], y: number, plan: SystemPlan, sketch: Sketch): void {
  rows.forEach((row, i) => {
    const base = y - i * runRowHeight(plan.style)
    for (const run of row) {
      const word = WORDS[run.kind]
      const size = plan.style.label
      const { width } = plan.fonts.measure('sans-italic', size, word)
      sketch.bar(run.bar, glyphs(run.kind, 'sans-italic', size, word, { x: run.left, y: base }))
      const [from, mid] = [run.left + width + WORD_GAP, base - size * 0.24]
      if (run.right - from < LEAST_DASHES - 1e-9) continue
      sketch.bar(run.bar, line(run.kind, { x1: from, y1: mid, x2: run.right, y2: mid }, 0.11, { dash: [0.6, 0.5] }))
      sketch.bar(run.bar, outline(run.kind, [MOVE, run.right, mid - 0.4, LINE, run.right, mid + 0.4], 0.11))
    }
  })
}
