import { parseChordSymbol } from '@barwise/parser'
import type { GlyphRun } from '../drawing/drawing.ts'
import { setText } from '../drawing/set-text.ts'
import type { FontSet } from '../fonts/font-set.ts'

/** A chord symbol set from its left edge on a base line at y = 0, in the unit of the size given. */
export interface ChordRuns {
  readonly runs: readonly GlyphRun[]
  readonly width: number
}

/** Size of what is raised, and how far, in ems of the root. */
const RAISED = { scale: 0.68, lift: 0.3 }
/** Accidentals made to stand in chord symbols. Source: SMuFL 1.4, range "Chord symbols". */
const SIGNS: Readonly<Record<string, string>> = { '♯': '\uED62', '♭': '\uED60', '♯♯': '\uED63', '♭♭': '\uED64' }
/** Room on both sides of an accidental in ems: those glyphs have no side bearings of their own. */
const SIGN_GAP = 0.04

/**
 * Sets a chord symbol as the trade prints it: root and `m` on the line, extensions raised and smaller, true flats and sharps, a slash
 * bass on the line. Text that is no symbol (`N.C.`) is set plain.
 */
export function chordRuns(symbol: string, size: number, fonts: FontSet): ChordRuns {
  const runs: GlyphRun[] = []
  let x = 0
  const add = (text: string, scale: number, lift: number): void => {
    // Accidentals are parted from the letters and figures around them.
    for (const piece of text.split(/([♯♭]+)/)) {
      const sign = SIGNS[piece]
      const gap = sign === undefined ? 0 : size * scale * SIGN_GAP
      const setting = { role: 'chord-symbol', face: 'sans-bold', size: size * scale } as const
      const set = setText(sign ?? piece, { x: x + gap, y: -lift * size }, setting, fonts)
      runs.push(...set.runs)
      x += set.measure.width + 2 * gap
    }
  }
  const display = parseChordSymbol(symbol)?.display
  if (display === undefined) {
    add(symbol, 1, 0)
    return { runs, width: x }
  }
  add(display.root + display.accidental + display.onLine.replace('-', '−'), 1, 0)
  add(display.raised, RAISED.scale, RAISED.lift)
  if (display.bass !== null) add(`/${display.bass.root}${display.bass.accidental}`, 1, 0)
  return { runs, width: x }
}
