import type { Key } from '@barwise/parser'

const LETTERS = ['F', 'C', 'G', 'D', 'A', 'E', 'B'] as const

/** The note `steps` fifths above C, with true signs, as in `noteOnCircle(-2)` = `B♭`. */
function noteOnCircle(steps: number): string {
  const letter = LETTERS[(((steps + 1) % 7) + 7) % 7] ?? 'C'
  const sharps = Math.floor((steps + 1) / 7)
  return letter + (sharps > 0 ? '♯'.repeat(sharps) : '♭'.repeat(-sharps))
}

/** The key a capo makes of the fingered one, with the fewest sharps or flats: E minor at fret 3 sounds in G minor. */
export function soundingKey(key: Key, capo: number): { readonly tonic: string; readonly mode: Key['mode'] } {
  const fifths = soundingFifths(key, capo)
  return { tonic: noteOnCircle(key.mode === 'minor' ? fifths + 3 : fifths), mode: key.mode }
}

/** The signature of that key in fifths, sharps above 0 and flats below; the key's own without a capo. */
export function soundingFifths(key: Key, capo: number): number {
  if (capo === 0) return key.fifths
  const turned = (((key.fifths + 7 * capo) % 12) + 12) % 12
  return turned > 6 ? turned - 12 : turned
}
