import type { Bar, ChordAt, Part, Ticks } from '@barwise/parser'
import type { FontSet } from '../../fonts/font-set.ts'
import { chordRuns } from '../chord-runs.ts'
import type { EngraveStyle } from '../style.ts'
import type { BuiltStretch, Stretch } from './build-columns.ts'

/** A chord symbol of a piece: over which column it begins and how wide it is. */
export interface PieceChord {
  readonly chord: ChordAt
  readonly column: number
  readonly width: number
}

export interface PieceChordsInput {
  readonly part: Part
  readonly stretch: Stretch
  readonly style: EngraveStyle
  readonly fonts: FontSet
  /** The bar before it on the same line, null where a line or an excerpt begins. */
  readonly before: Bar | null
}

/**
 * The symbols printed over a piece: each where it changes, and what is in force said again where the eye starts anew (a line, an excerpt, a
 * repeat, an ending, a section). Common practice.
 */
export function pieceChords(
  { part, stretch, style, fonts, before }: PieceChordsInput,
  built: BuiltStretch,
): readonly PieceChord[] {
  const { bar } = stretch.content
  const anew = before === null || (stretch.from === 0 && startsAnew(part, bar))
  const inside = bar.chords.filter((chord) => chord.at >= stretch.from && chord.at < stretch.to)
  let inForce = symbolBefore(part, bar, stretch.from)
  const shown: ChordAt[] = []
  if (anew) {
    const first = built.columns.find(({ kind }) => kind === 'notes')?.written.at
    if (inForce !== null && inForce !== undefined && first !== undefined && !inside.some(({ at }) => at <= first))
      shown.push({ at: first, symbol: inForce, written: false })
    else inForce = undefined
  }
  for (const chord of inside) {
    if (chord.symbol !== inForce) shown.push(chord)
    inForce = chord.symbol
  }
  return shown.map((chord) => ({
    chord,
    column: Math.max(
      0,
      built.columns.findLastIndex(({ written }) => written.at <= chord.at),
    ),
    width: chordRuns(chord.symbol ?? 'N.C.', style.chord, fonts).width,
  }))
}

/** The symbol that holds up to a tick of a bar; null for "no chord", undefined before the first. */
function symbolBefore(part: Part, bar: Bar, at: Ticks): string | null | undefined {
  const index = part.bars.indexOf(bar)
  const earlier = [
    ...part.bars.slice(0, Math.max(0, index)).flatMap(({ chords }) => chords),
    ...bar.chords.filter((chord) => chord.at < at),
  ]
  return earlier.at(-1)?.symbol
}

function startsAnew(part: Part, { number, section }: Bar): boolean {
  return (
    section !== null ||
    part.repeats.some((repeat) => repeat.from === number || repeat.endings.some((ending) => ending.from === number))
  )
}
