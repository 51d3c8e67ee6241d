import { type Grid, slotTicks, TICKS_PER_QUARTER, type Ticks } from '../score/time.ts'
import type { Span } from '../source/span.ts'
import { type BarContext, beatName, counted, spanFrom } from './context.ts'
import type { Segment } from './draft.ts'
import { type Cell, layRun, splitBeats } from './lay-run.ts'
import { readSignRun } from './sign-run.ts'

/** The bar a beat line stands in. */
export interface BeatFrame {
  readonly beats: number
  readonly beatTicks: Ticks
  readonly grid: Grid
}

/** What a beat line fills. `segments` is null when its signs cannot be used; the mistake has been reported. */
export interface BeatLine {
  readonly firstBeat: number
  readonly lastBeat: number
  readonly segments: readonly Segment[] | null
  /** The words before the signs, `3-4 in 3:`. */
  readonly head: Span
}

const HEAD = /^(\d{1,5})(?:\s*-\s*(\d{1,5}))?(?:\s+in\s*(\d{1,5}))?\s*:/
const MOST_PARTS_A_BEAT = 16

/** Whether a line begins as a beat line does. */
export function startsBeatLine(text: string): boolean {
  return HEAD.test(text)
}

/**
 * Reads `2: x x x x`, `3-4: ...`, `2 in 3: ...`. Null when the line names no beat of the bar, which is reported.
 *
 * @param text the line (after `or`, if any) with plain signs for typographic ones.
 * @param offset where `text` stands in the file.
 */
export function readBeatLine(
  text: string,
  offset: number,
  { frame, context }: { readonly frame: BeatFrame; readonly context: BarContext },
): BeatLine | null {
  const match = HEAD.exec(text)
  if (match === null) return null
  const firstBeat = Number(match[1])
  const lastBeat = match[2] === undefined ? firstBeat : Number(match[2])
  const parts = match[3] === undefined ? null : Number(match[3])
  const head = spanFrom(offset, 0, match[0].length)
  const named = spanFrom(offset, 0, /^\d+(?:\s*-\s*\d+)?/.exec(text)?.[0].length ?? 1)
  if (firstBeat < 1 || lastBeat > frame.beats || lastBeat < firstBeat) {
    const backwards = lastBeat < firstBeat && firstBeat <= frame.beats && lastBeat >= 1
    const message = backwards
      ? `beats ${firstBeat}-${lastBeat} run backwards`
      : `there is no ${beatName(firstBeat, lastBeat)} in a bar of ${counted(frame.beats, 'beat')}`
    const help = backwards ? `write \`${lastBeat}-${firstBeat}:\`` : `use beats 1 to ${frame.beats}`
    context.report({ code: 'no-such-beat', span: named, message, help })
    return null
  }
  const lost: BeatLine = { firstBeat, lastBeat, segments: null, head }
  const length = (lastBeat - firstBeat + 1) * frame.beatTicks
  if (parts !== null && !cutFits(parts, { firstBeat, lastBeat, length }, { head, context })) return lost
  const items = readSignRun(text, match[0].length, { offset, context })
  const cells = items.filter((item): item is Cell => item.kind !== 'beat-bar')
  if (cells.length === 0) {
    const message = `${beatName(firstBeat, lastBeat)} ${firstBeat === lastBeat ? 'has' : 'have'} no signs`
    const help = 'write its signs after the colon (`-` holds, `.` is silence)'
    context.report({ code: 'empty-beat', span: head, message, help })
    return lost
  }
  if (cells.some((cell) => cell.signs.length === 0)) return lost
  const slots = parts ?? length / slotTicks(frame.grid)
  const run = { firstBeat, lastBeat, parts, slots, items, cells, frame }
  if (sumSlots(cells) !== slots && cells.some(standsForMany)) return lost
  if (!barsStandRight(run, context) || !bracketsDivide(run, length, context)) return lost
  return { firstBeat, lastBeat, head, segments: layCells(run) }
}

/** A sign that cannot be read and was meant for several (it has been reported), so that to count it says nothing. */
function standsForMany({ signs }: Cell): boolean {
  return signs.some(
    ({ text, meaning }) => meaning.kind === 'lost' && /^(?:%|\u2026|\.{2,})$|^[a-z]{1,2}:$|^[A-Za-z].*-/.test(text),
  )
}

interface Run {
  readonly firstBeat: number
  readonly lastBeat: number
  readonly parts: number | null
  readonly slots: number
  readonly items: ReturnType<typeof readSignRun>
  readonly cells: readonly Cell[]
  readonly frame: BeatFrame
}

function cutFits(
  parts: number,
  beats: { readonly firstBeat: number; readonly lastBeat: number; readonly length: Ticks },
  { head, context }: { readonly head: Span; readonly context: BarContext },
): boolean {
  const most = MOST_PARTS_A_BEAT * (beats.lastBeat - beats.firstBeat + 1)
  if (parts >= 1 && parts <= most && beats.length % parts === 0) return true
  const name = beatName(beats.firstBeat, beats.lastBeat)
  const message =
    parts > most
      ? `${name} in ${parts} is more than 16 parts a beat`
      : `${name} cannot be cut into ${parts} equal parts`
  const fitting = fittingParts(parts, beats.length, most)
  const help = `cut ${beats.firstBeat === beats.lastBeat ? 'it' : 'them'} in ${fitting.join(' or ')}`
  context.report({ code: 'cut-does-not-divide', span: head, message, help })
  return false
}

/** The nearest numbers of parts below and above that divide a stretch. */
function fittingParts(parts: number, length: Ticks, most: number): readonly number[] {
  const below = Array.from({ length: most }, (_, index) => most - index).find((n) => n < parts && length % n === 0)
  const above = Array.from({ length: most }, (_, index) => index + 1).find((n) => n > parts && length % n === 0)
  return [below, above].filter((n) => n !== undefined)
}

/** Checks the number of signs and the places of `|`; true when all is right. One mistake gives one finding. */
function barsStandRight(run: Run, context: BarContext): boolean {
  const stretches = cellsBetweenBars(run)
  const beats = run.lastBeat - run.firstBeat + 1
  const perBeat = run.slots / beats
  const total = sumSlots(run.cells)
  if (stretches.length === beats && beats > 1) {
    const wrong = stretches.findIndex((stretch) => sumSlots(stretch) !== perBeat)
    if (wrong < 0) return true
    if (total !== run.slots && Number.isInteger(perBeat)) {
      reportCount(
        { ...run, first: run.firstBeat + wrong, last: run.firstBeat + wrong, needs: perBeat },
        stretches[wrong] ?? [],
        context,
      )
      return false
    }
  }
  if (total !== run.slots) {
    reportCount({ ...run, first: run.firstBeat, last: run.lastBeat, needs: run.slots }, run.cells, context)
    return false
  }
  let slots = 0
  for (const item of run.items) {
    if (item.kind !== 'beat-bar') {
      slots += item.slots
      continue
    }
    const beat = slots / perBeat
    if (Number.isInteger(beat) && beat > 0 && beat < beats) continue
    const help = beats > 1 ? `put it between two beats: after every ${perBeat} signs` : 'take it away'
    context.report({
      code: 'misplaced-beat-bar',
      span: item.span,
      message: 'this `|` does not stand between two beats',
      help,
    })
    return false
  }
  return true
}

function cellsBetweenBars(run: Run): readonly (readonly Cell[])[] {
  const stretches: Cell[][] = [[]]
  for (const item of run.items) {
    if (item.kind === 'beat-bar') stretches.push([])
    else stretches.at(-1)?.push(item)
  }
  return stretches
}

function sumSlots(cells: readonly Cell[]): number {
  return cells.reduce((sum, cell) => sum + cell.slots, 0)
}

const GRID_NAMES: Readonly<Record<Grid, string>> = {
  4: 'a quarter grid',
  8: 'an eighth grid',
  16: 'a sixteenth grid',
  32: 'a thirty-second grid',
}

function reportCount(
  run: Run & { readonly first: number; readonly last: number; readonly needs: number },
  cells: readonly Cell[],
  { report }: BarContext,
): void {
  const has = sumSlots(cells)
  const one = run.first === run.last
  const bracketed = cells.some((cell) => cell.kind === 'bracket')
  const noun = bracketed ? 'slot' : 'sign'
  const needed =
    run.parts === null ? `${GRID_NAMES[run.frame.grid]} needs ${run.needs}` : `a cut in ${run.parts} needs ${run.needs}`
  const message = `${beatName(run.first, run.last)} ${one ? 'has' : 'have'} ${counted(has, noun)}, ${needed}`
  const first = cells[0]?.span.start ?? run.items[0]?.span.start ?? 0
  const end = cells.at(-1)?.span.end ?? run.items.at(-1)?.span.end ?? first
  report({ code: 'wrong-slot-count', span: { start: first, end }, message, help: countHelp(run, has) })
}

function countHelp(
  run: {
    readonly first: number
    readonly last: number
    readonly needs: number
    readonly parts: number | null
    readonly frame: BeatFrame
  },
  has: number,
): string {
  const missing = run.needs - has
  const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight']
  const number = small[Math.abs(missing)] ?? String(Math.abs(missing))
  const plural = Math.abs(missing) === 1 ? 'sign' : 'signs'
  const mend = missing > 0 ? `add ${number} ${plural} (\`-\` holds, \`.\` is silence)` : `take ${number} ${plural} away`
  const beats = run.last - run.first + 1
  const length = beats * run.frame.beatTicks
  if (has < 1 || length % has !== 0 || has > MOST_PARTS_A_BEAT * beats) return mend
  const range = beats === 1 ? `${run.first}` : `${run.first}-${run.last}`
  const why = has === 3 && length === TICKS_PER_QUARTER ? ' for a triplet' : ''
  return `${mend}, or write \`${range} in ${has}:\`${why}`
}

function bracketsDivide(run: Run, length: Ticks, { report }: BarContext): boolean {
  for (const cell of run.cells) {
    const ticks = (length / run.slots) * cell.slots
    if (ticks % cell.signs.length === 0) continue
    const message = `${counted(cell.signs.length, 'sign')} cannot share ${counted(cell.slots, 'slot')} evenly`
    const help = 'change the number of signs in the bracket, or the slots after it'
    report({ code: 'cut-does-not-divide', span: cell.span, message, help })
    return false
  }
  return true
}

/** A cut over several beats whose parts divide evenly among them is one cut a beat. */
function layCells(run: Run): readonly Segment[] {
  const { frame, firstBeat, lastBeat } = run
  const beats = lastBeat - firstBeat + 1
  const perBeat = run.slots / beats
  const pieces = Number.isInteger(perBeat) ? cellsByBeat(run.cells, perBeat) : null
  if (run.parts === null || pieces === null) {
    const at = (firstBeat - 1) * frame.beatTicks
    const laid = layRun(run.cells, { at, length: beats * frame.beatTicks, slots: run.slots, grid: frame.grid })
    return splitBeats(laid, { first: firstBeat, last: lastBeat, ticks: frame.beatTicks })
  }
  return pieces.flatMap((cells, index) => {
    const beat = firstBeat + index
    const at = (beat - 1) * frame.beatTicks
    const laid = layRun(cells, { at, length: frame.beatTicks, slots: perBeat, grid: frame.grid })
    return splitBeats(laid, { first: beat, last: beat, ticks: frame.beatTicks })
  })
}

/** The cells of each beat, null when a bracket reaches over the edge of one. */
function cellsByBeat(cells: readonly Cell[], perBeat: number): readonly (readonly Cell[])[] | null {
  const pieces: Cell[][] = []
  let slots = 0
  for (const cell of cells) {
    const beat = Math.floor(slots / perBeat)
    slots += cell.slots
    if (slots > (beat + 1) * perBeat) return null
    const piece = pieces[beat] ?? []
    piece.push(cell)
    pieces[beat] = piece
  }
  return pieces
}
