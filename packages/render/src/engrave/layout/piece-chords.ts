import type { Bar, ChordAt, Part } from '@barwise/parser'
import type { FontSet } from '../../fonts/font-set.ts'
import { chordRuns } from '../chord-runs.ts'
import { shownChords } from '../shown-chords.ts'
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

/** The symbols printed over a piece, each over its column. */
export function pieceChords(
  { part, stretch, style, fonts, before }: PieceChordsInput,
  built: BuiltStretch,
): readonly PieceChord[] {
  const shown = shownChords(part, stretch.content.bar, {
    from: stretch.from,
    to: stretch.to,
    firstNotes: built.columns.find(({ kind }) => kind === 'notes')?.written.at,
    anew: before === null,
  })
  return shown.map((chord) => ({
    chord,
    column: Math.max(
      0,
      built.columns.findLastIndex(({ written }) => written.at <= chord.at),
    ),
    width: chordRuns(chord.symbol ?? 'N.C.', style.chord, fonts).width,
  }))
}
