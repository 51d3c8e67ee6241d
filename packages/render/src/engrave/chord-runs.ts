import type { GlyphRun } from '../drawing/drawing.ts'
import type { FontSet } from '../fonts/font-set.ts'

/** A chord symbol set from its left edge on a base line at y = 0, in the unit of the size given. */
export interface ChordRuns {
  readonly runs: readonly GlyphRun[]
  readonly width: number
}

/** Size of what is raised, and how far, in ems of the root. */
const RAISED = { scale: 0.68, lift: 0.3 }
/** Accidentals made to stand in chord symbols. Source: SMuFL 1.4, range "Chord symbols". */
const ACCIDENTALS: Readonly<Record<string, string>> = {
  '#': '\ued62',
  b: '\ued60',
  '\u266f': '\ued62',
  '\u266d': '\ued60',
}

/**
 * Sets a chord symbol as the trade prints it: root and `m` on the line, extensions raised and smaller, true flats and sharps, a slash
 * bass on the line. Text that is no symbol is set plain.
 */
export function chordRuns(symbol: string, size: number, fonts: FontSet): ChordRuns {
  const match = /^([A-G])([#b♯♭]?)(m(?!aj)|dim|aug)?(.*?)(?:\/([A-G])([#b♯♭]?))?$/.exec(symbol)
  const runs: GlyphRun[] = []
  let x = 0
  const add = (text: string, scale: number, lift: number): void => {
    const em = size * scale
    const { runs: pieces } = fonts.itemise('sans-bold', text)
    for (const piece of pieces) {
      const runSize = em * piece.scale
      runs.push({
        kind: 'glyphs',
        role: 'chord-symbol',
        face: piece.face,
        size: runSize,
        text: piece.text,
        x,
        y: -lift * size,
        ink: 'ink',
      })
      x += fonts.measure(piece.face, runSize, piece.text).width
    }
  }
  if (match === null) {
    add(symbol, 1, 0)
    return { runs, width: x }
  }
  const [, root = '', sign = '', quality = '', extension = '', bass, bassSign = ''] = match
  add(root, 1, 0)
  if (sign !== '') add(ACCIDENTALS[sign] ?? sign, 0.95, 0.05)
  if (quality !== '') add(quality, 1, 0)
  if (extension !== '') add(signsOf(extension), RAISED.scale, RAISED.lift)
  if (bass !== undefined) {
    add('/', 1, 0)
    add(bass, 1, 0)
    if (bassSign !== '') add(ACCIDENTALS[bassSign] ?? bassSign, 0.95, 0.05)
  }
  return { runs, width: x }
}

/** Sharps and flats inside an extension: before a figure only, so that `sus` and `add` keep their letters. */
function signsOf(extension: string): string {
  return extension.replace(/[#b♯♭](?=\d)/g, (sign) => ACCIDENTALS[sign] ?? sign)
}
