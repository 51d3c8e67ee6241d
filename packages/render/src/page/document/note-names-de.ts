/**
 * A note in German from its international name with true signs: F♯ is Fis, E♭ Es, A♭ As, B natural H. B flat keeps its sign
 * (B♭) although German calls it B: beside international chord symbols, where B is the chord on H, a bare B could mean either.
 *
 * @example noteName('C♯') // 'Cis'
 */
export function noteName(international: string): string {
  const [letter = '', ...signs] = international
  const alter = signs.filter((sign) => sign === '♯').length - signs.filter((sign) => sign === '♭').length
  if (letter === 'B' && alter < 0) return `B${'♭'.repeat(-alter)}`
  const natural = letter === 'B' ? 'H' : letter
  if (alter >= 0) return natural + 'is'.repeat(alter)
  const first = natural === 'E' || natural === 'A' ? 's' : 'es'
  return natural + first + first.repeat(-alter - 1)
}

/**
 * A key in German, as in "G-Dur", "fis-Moll". German keys on B and H carry their chord symbol, which is written otherwise:
 * "H-Dur (Akkord B)", "b-Moll (Akkord B♭m)".
 *
 * @example keyName('E', 'minor') // 'e-Moll'
 */
export function keyName(tonic: string, mode: 'major' | 'minor'): string {
  const german = tonic === 'B♭' ? 'B' : noteName(tonic)
  const name = mode === 'major' ? `${german}-Dur` : `${german.toLowerCase()}-Moll`
  return tonic.startsWith('B') ? `${name} (Akkord ${tonic}${mode === 'minor' ? 'm' : ''})` : name
}
