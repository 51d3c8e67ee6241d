import type { DrawnItem } from '../drawing/drawing.ts'
import type { FontSet } from '../fonts/font-set.ts'

/** Accidentals made to stand beside capitals. Source: SMuFL 1.4, range "Chord symbols" (csymAccidental...). */
const SIGNS: Readonly<Record<string, string>> = {
  '#': '\uED62',
  b: '\uED60',
  '##': '\uED63',
  bb: '\uED64',
}

/**
 * A note name such as `C#` (an octave after it is left out) set with a true accidental, centred on `x`; the letter is never moved by more
 * than half the sign. B natural goes by `bNatural`, B flat keeps its B in every language: its sign tells it. A text that is no note
 * name gives nothing.
 */
export function noteName(
  name: string,
  at: { readonly x: number; readonly y: number },
  size: number,
  { fonts, bNatural = 'B' }: { readonly fonts: FontSet; readonly bNatural?: 'B' | 'H' },
): readonly DrawnItem[] {
  const match = /^([A-G])(##|bb|#|b)?-?\d*$/.exec(name)
  if (match === null) return []
  const [, written = '', alter = ''] = match
  const letter = written === 'B' && !alter.startsWith('b') ? bNatural : written
  const letterWidth = fonts.measure('sans', size, letter).width
  const sign = SIGNS[alter]
  const signSize = size * 0.82
  const gap = size * 0.03
  const signWidth = sign === undefined ? 0 : gap + fonts.measure('music', signSize, sign).right
  const x = at.x - (letterWidth + signWidth) / 2
  const base = { kind: 'glyphs', role: 'text', y: at.y, ink: 'ink' } as const
  const items: DrawnItem[] = [{ ...base, face: 'sans', size, text: letter, x }]
  if (sign !== undefined) {
    // Double sharps sit at half height, the others rise a little over the capital.
    const lift = alter === '##' ? size * 0.12 : size * 0.06
    items.push({ ...base, face: 'music', size: signSize, text: sign, x: x + letterWidth + gap, y: at.y - lift })
  }
  return items
}
