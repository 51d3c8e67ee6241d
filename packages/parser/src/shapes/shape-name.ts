const NAME = /^[A-Za-z](?:[A-Za-z0-9#/()°øΔ]|,(?=[^()]*\))|[.-](?=[A-Za-z0-9])|\+(?!\d))*$/

/**
 * Whether a word can name a shape: a letter first, then letters, digits, `#`, `/`, brackets, `°`, `ø`, `Δ`, a comma inside
 * brackets, `.` and `-` before a letter or digit, `+` when no digit follows. `x` and `X` are scratches.
 *
 * @example isShapeName('Em7.open') // true
 * @example isShapeName('x') // false
 */
export function isShapeName(text: string): boolean {
  return NAME.test(text) && text !== 'x' && text !== 'X'
}
