import type { Bar, Ending } from '@barwise/parser'
import { type DrawnItem, LINE, MOVE } from '../../drawing/drawing.ts'
import { translate } from '../../drawing/place.ts'
import { glyphs, outline } from '../../drawing/shapes.ts'
import { chordRuns } from '../chord-runs.ts'
import type { PlacedPiece } from '../layout/solve-spacing.ts'
import { drawVibrato } from './draw-vibrato.ts'
import type { PlacedColumn, SystemPlan } from './plan.ts'
import type { Sketch } from './sketch.ts'

/** What is told over a system besides its chord symbols. */
export interface RowsAbove {
  /** Whether the tempo of the first bar of the part is printed; changes always are. */
  readonly firstTempo: boolean
  /** Whether the bar number stands at the system's start. */
  readonly barNumber: boolean
  /** Whether names of sections are printed. */
  readonly sections: boolean
}

/** Stacks what stands over the staff on what is already there: vibrato, chord symbols, bar number, section and tempo, endings. */
export function drawAbove(plan: SystemPlan, columns: readonly PlacedColumn[], rows: RowsAbove, sketch: Sketch): void {
  drawVibrato(plan, columns, sketch)
  drawChords(plan, columns, sketch)
  if (rows.barNumber) drawBarNumber(plan, sketch)
  for (const placed of plan.pieces) drawHeading(placed, plan, rows, sketch)
  drawEndings(plan, sketch)
}

function drawChords(plan: SystemPlan, columns: readonly PlacedColumn[], sketch: Sketch): void {
  const symbols = plan.pieces.flatMap((placed) =>
    placed.piece.chords.map(({ chord, column }) => {
      const set = chordRuns(chord.symbol ?? 'N.C.', plan.style.chord, plan.fonts)
      return { set, x: chordX(placed, column, chord.at) - 0.59, bar: placed.piece.bar.number }
    }),
  )
  if (symbols.length === 0 || columns.length === 0) return
  const tops = symbols.map(({ x, set }) => sketch.topOver(x - 0.2, x + set.width + 0.2, -0.6))
  const y = Math.min(...tops) - 0.75
  for (const { set, x, bar } of symbols) sketch.bar(bar, ...translate(set.runs, x, y))
}

/** A symbol stands over its tick, between two columns when none begins there. */
function chordX(placed: PlacedPiece, index: number, at: number): number {
  const column = placed.piece.built.columns[index]
  const x = placed.xs[index] ?? placed.x
  if (column === undefined || column.written.at >= at) return x
  const next = placed.xs[index + 1] ?? placed.end
  return x + ((next - x) * (at - column.written.at)) / column.written.ticks
}

function drawBarNumber(plan: SystemPlan, sketch: Sketch): void {
  const first = plan.pieces[0]
  if (first === undefined || first.piece.bar.number < 2) return
  const text = String(first.piece.bar.number)
  const { width } = plan.fonts.measure('sans', plan.style.label, text)
  const y = sketch.topOver(-0.5, width + 0.3, -0.6) - 0.45
  sketch.bar(first.piece.bar.number, glyphs('bar-number', 'sans', plan.style.label, text, { x: 0, y }))
}

function drawHeading(placed: PlacedPiece, plan: SystemPlan, rows: RowsAbove, sketch: Sketch): void {
  const { bar, stretch } = placed.piece
  if (stretch.from > 0) return
  const all = plan.part.bars
  const before = all[all.findIndex((candidate) => candidate.number === bar.number) - 1]
  const tempo =
    before === undefined ? rows.firstTempo : before.tempoBpm !== bar.tempoBpm || before.beatTicks !== bar.beatTicks
  const feel = before === undefined ? rows.firstTempo && bar.feel !== 'straight' : before.feel !== bar.feel
  const start = placed === plan.pieces[0] ? 0 : placed.x
  const items: DrawnItem[] = []
  let x = 0
  const { style, fonts } = plan
  const put = (
    role: 'section' | 'tempo',
    face: 'sans' | 'sans-bold' | 'sans-italic' | 'music',
    size: number,
    text: string,
    gap: number,
  ): void => {
    items.push(glyphs(role, face, size, text, { x, y: 0 }, role === 'section' ? { ink: 'accent' } : {}))
    x += fonts.measure(face, size, text).width + gap
  }
  if (rows.sections && bar.section !== null) put('section', 'sans-bold', style.tempo * 1.1, bar.section, 1.4)
  if (tempo) {
    put('tempo', 'music', style.tempo * 1.45, noteSign(bar), 0.35)
    put('tempo', 'sans', style.tempo, `= ${bar.tempoBpm}`, 1.2)
  }
  if (feel) {
    put('tempo', 'sans-italic', style.tempo, bar.feel === 'straight' ? 'straight' : 'swing', 0.5)
    if (bar.feel !== 'straight')
      put('tempo', 'music', style.tempo * 1.45, bar.feel === 'swing 8' ? '\ueca7' : '\ueca9', 0)
  }
  if (items.length === 0) return
  const y = sketch.topOver(start - 0.2, start + x + 0.4, -1) - 1
  sketch.bar(bar.number, ...translate(items, start, y))
}

/** The note that is counted, from the music font: quarter, eighth, half or sixteenth, with its dot. */
function noteSign(bar: Bar): string {
  const signs: readonly (readonly [number, string])[] = [
    [6720, '\ueca3'],
    [3360, '\ueca5'],
    [1680, '\ueca7'],
    [840, '\ueca9'],
  ]
  for (const [ticks, sign] of signs) {
    if (bar.beatTicks === ticks) return sign
    if (bar.beatTicks * 2 === ticks * 3) return `${sign}\uecb7`
  }
  return '\ueca5'
}

/** Brackets above all else: number at the left, a hook at the right where the ending turns back, open where the music goes on. */
function drawEndings(plan: SystemPlan, sketch: Sketch): void {
  const endings = plan.part.repeats.flatMap((repeat) =>
    repeat.endings.map((ending, i) => ({ ending, back: i < repeat.endings.length - 1 })),
  )
  const spans = endings.flatMap(({ ending, back }) => {
    const inside = plan.pieces.filter(({ piece }) => piece.bar.number >= ending.from && piece.bar.number <= ending.to)
    const [first, last] = [inside[0], inside.at(-1)]
    return first === undefined || last === undefined ? [] : [{ ending, back, first, last }]
  })
  if (spans.length === 0) return
  const deep = Math.max(2, plan.style.label * 1.4)
  const y = Math.min(...spans.map(({ first, last }) => sketch.topOver(first.x, last.end, -0.6))) - deep - 0.6
  for (const { ending, back, first, last } of spans) {
    const begins = first.piece.bar.number === ending.from && first.piece.stretch.from === 0
    const ends = last.piece.bar.number === ending.to && last.piece.closing !== 'none'
    const left = first === plan.pieces[0] ? Math.max(0, first.x - 0.5) : first.x + 0.15
    const right = last.end - 0.25
    const data = [
      ...(begins ? [MOVE, left, y + deep, LINE, left, y] : [MOVE, left, y]),
      LINE,
      right,
      y,
      ...(ends && back ? [LINE, right, y + deep] : []),
    ]
    sketch.bar(first.piece.bar.number, outline('ending', data, 0.14))
    if (begins) sketch.bar(first.piece.bar.number, endingNumber(ending, left + 0.5, y + deep - 0.45, plan))
  }
}

function endingNumber(ending: Ending, x: number, y: number, plan: SystemPlan): DrawnItem {
  const { numbers } = ending
  const [first, last] = [numbers[0] ?? 1, numbers.at(-1) ?? 1]
  const text = numbers.length === 1 ? `${first}.` : numbers.length === 2 ? `${first}. ${last}.` : `${first}.–${last}.`
  return glyphs('ending', 'sans-semibold', plan.style.label * 1.08, text, { x, y })
}
