import type { Bar, Instrument, Key, Metre, Part } from '@barwise/parser'
import type { FontSet } from '../../fonts/font-set.ts'
import type { EngraveStyle } from '../style.ts'
import { type Signature, signatureStamp } from '../vexflow-door/signature-stamp.ts'
import { type BuiltStretch, buildColumns, HEAD_WIDTH, type Stretch } from './build-columns.ts'
import { type Column, isUnstruck, strikeOf } from './column.ts'
import { type PieceChord, pieceChords } from './piece-chords.ts'

/** How a bar begins and ends. `none` is no line: the cut inside a bar. */
export type Opening = 'plain' | 'repeat' | 'none'
export type Closing = 'single' | 'double' | 'final' | 'repeat' | 'none'

/** The room after a column, up to the next or to the bar line, in staff spaces: never less than `rod`, `spring` at natural width. */
export interface Gap {
  readonly rod: number
  readonly spring: number
}

/** A bar, or a piece of one, ready to be put into a system. Lengths are staff spaces. */
export interface Piece {
  readonly stretch: Stretch
  readonly bar: Bar
  readonly built: BuiltStretch
  readonly opening: Opening
  readonly closing: Closing
  /** Key and time that change at its start. */
  readonly signs: readonly Signature[]
  /** From its left bar line to the centre of its first column. */
  readonly lead: number
  readonly gaps: readonly Gap[]
  readonly chords: readonly PieceChord[]
}

/** Room of bar lines and their dots inside a bar. */
const REPEAT_OPEN = 2.3
const REPEAT_CLOSE = 1.7
/** From a sign to the next, and from the last to the first column. */
const SIGN_GAP = 1

export interface PieceInput {
  readonly part: Part
  readonly stretch: Stretch
  readonly instrument: Instrument
  readonly style: EngraveStyle
  readonly fonts: FontSet
  /** The bar before in the part, null for the first printed: what changes is told against it. */
  readonly before: Bar | null
  /** The next bar of the part, null after the last. */
  readonly after: Bar | null
}

/** Builds a piece: its columns, its room, and the signs at its edges. */
export function buildPiece(input: PieceInput): Piece {
  const { part, stretch, instrument, style, fonts, before, after } = input
  const { bar } = stretch.content
  const built = buildColumns(stretch, instrument, style, fonts)
  const starts = stretch.from === 0
  const ends = stretch.to === bar.length
  const opening: Opening = !starts
    ? 'none'
    : part.repeats.some((repeat) => repeat.from === bar.number)
      ? 'repeat'
      : 'plain'
  const signs = starts && before !== null ? changeSigns(before, bar, instrument) : []
  const columns = built.columns
  const signWidth = signs.reduce((sum, sign) => sum + signatureStamp(sign, fonts).width + SIGN_GAP, 0)
  const lead =
    (opening === 'repeat' ? REPEAT_OPEN : opening === 'plain' ? 0.35 : 0) + signWidth + 0.85 + (columns[0]?.left ?? 0.6)
  const closing = ends ? closingOf(part, bar, after) : 'none'
  const gaps = columns.map((column, i): Gap => {
    const next = columns[i + 1]
    const ticks = column.written.ticks
    const spring = style.naturalColumn * Math.sqrt(ticks / 840)
    const edge = next === undefined ? (closing === 'repeat' ? REPEAT_CLOSE : 0.55) : 0
    const ink = column.right + (next === undefined ? edge : next.left) + 0.55
    const least = next === undefined ? style.minColumn * 0.62 : ticks >= 840 ? style.minColumn : style.minColumn * 0.74
    return {
      rod: Math.max(ink, least, next === undefined ? 0 : moveRoom(column, next)),
      spring: Math.max(spring, edge),
    }
  })
  return { stretch, bar, built, opening, closing, signs, lead, gaps, chords: pieceChords(input, built) }
}

/** What the arcs and lines of a hammered, pulled or slid column need to be seen. */
function moveRoom(column: Column, next: Column): number {
  if (!isUnstruck(next)) return 0
  const heads = column.headRight + next.headLeft
  return strikeOf(next)?.technique === 'slide'
    ? Math.max(column.tab.half + next.tab.half + 1.5, heads + 1.4)
    : heads + 1.1
}

/** How a bar ends: where a repeat turns back, where the part ends, before a section. */
export function closingOf(part: Part, bar: Bar, after: Bar | null): Closing {
  for (const repeat of part.repeats) {
    const last = repeat.endings.at(-1)
    if (
      repeat.endings.length === 0
        ? repeat.to === bar.number
        : repeat.endings.some((ending) => ending !== last && ending.to === bar.number)
    )
      return 'repeat'
  }
  if (after === null) return 'final'
  if (after.section !== null && bar.number !== 0) return 'double'
  return 'single'
}

/** The key and time signs printed where a bar differs from the one before. */
export function changeSigns(before: Bar, bar: Bar, instrument: Instrument): readonly Signature[] {
  const signs: Signature[] = []
  if (before.key.fifths !== bar.key.fifths) signs.push(keySign(bar.key, before.key, instrument))
  if (!sameMetre(before.metre, bar.metre)) signs.push({ kind: 'time', ...bar.metre })
  return signs
}

/** A key signature; after a key with signs, C major prints the naturals that cancel it. */
export function keySign(key: Key, before: Key | null, instrument: Instrument): Signature {
  const cancels = key.fifths === 0 && before !== null && before.fifths !== 0 ? before.fifths : null
  return { kind: 'key', fifths: key.fifths, cancels, clef: instrument.clef === 'bass-8' ? 'bass' : 'treble' }
}

function sameMetre(a: Metre, b: Metre): boolean {
  return a.count === b.count && a.unit === b.unit
}

/** The least and the natural width of a piece. */
export function pieceWidth(piece: Piece): { readonly least: number; readonly natural: number } {
  let [least, natural] = [piece.lead, piece.lead]
  for (const gap of piece.gaps) {
    least += gap.rod
    natural += Math.max(gap.rod, gap.spring)
  }
  const symbols = piece.chords.reduce((sum, chord) => sum + chord.width + 0.9, 0) + piece.lead
  return { least: Math.max(least, symbols), natural: Math.max(natural, symbols) }
}

/** What stands before the first bar of a system, in staff spaces from its left edge. */
export interface SystemHead {
  readonly signs: readonly { readonly sign: Signature; readonly x: number }[]
  readonly width: number
}

/** Clef, key and (at the start of a part or a change) time, a staff space apart. */
export function systemHead(bar: Bar, withTime: boolean, instrument: Instrument, fonts: FontSet): SystemHead {
  const signs: Signature[] = [{ kind: 'clef', clef: instrument.clef }]
  if (bar.key.fifths !== 0) signs.push(keySign(bar.key, null, instrument))
  if (withTime) signs.push({ kind: 'time', ...bar.metre })
  let x = 0.55
  const placed = signs.map((sign) => {
    const at = { sign, x }
    x += signatureStamp(sign, fonts).width + (sign.kind === 'clef' ? 0.9 : SIGN_GAP)
    return at
  })
  return { signs: placed, width: x - HEAD_WIDTH * 0.2 }
}
