import type { ChordSymbol } from './chord-symbol.ts'
import type { ToneName } from './chord-tone.ts'

/**
 * The tones a chord can do without and keep its name (common practice; the published chord sets leave out the same): the
 * perfect fifth of anything but a power chord; the ninth and eleventh of a thirteenth; the ninth and the major third of an
 * eleventh; the ninth of a C9#11; any of the altered tones of an altered chord.
 *
 * @example omissibleTones(C13) // 5, 9, 11
 * @example omissibleTones(C9) // 5
 */
export function omissibleTones(chord: ChordSymbol): ReadonlySet<ToneName> {
  const has = (name: ToneName): boolean => chord.tones.some((tone) => tone.name === name)
  const omissible = new Set<ToneName>()
  if (has('5') && chord.tones.length > 2) omissible.add('5')
  if (chord.stack === 13) add(omissible, '9', '11')
  if (chord.stack === 11) add(omissible, '9', '3')
  if (chord.stack === 9 && has('#11')) omissible.add('9')
  if (chord.altered) add(omissible, 'b5', '#5', 'b9', '#9')
  return omissible
}

function add(names: Set<ToneName>, ...more: readonly ToneName[]): void {
  for (const name of more) names.add(name)
}
