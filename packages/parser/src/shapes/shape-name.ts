/**
 * Whether a word can name a shape. `x` and `X` are scratches.
 *
 * @example isShapeName('Em7.open') // true
 * @example isShapeName('Em7+10') // false: an added note needs a shape before it
 */
export function isShapeName(text: string): boolean {
  return text !== '' && shapeNameLength(text) === text.length && text !== 'x' && text !== 'X'
}

/**
 * How many characters at the start of a text are the name of a shape by the rules of the language; 0 when none begins there.
 * A `+` belongs to the name unless an added note (a figure, or `x@`) follows; a `,` only inside brackets.
 *
 * @example shapeNameLength('Em7+10@1') // 3
 * @example shapeNameLength('C7(b9,#11)@1-3') // 10
 */
export function shapeNameLength(text: string): number {
  if (!/^[A-Za-z]/.test(text)) return 0
  let depth = 0
  for (let at = 1; at < text.length; at++) {
    const sign = text[at] ?? ''
    const next = text[at + 1] ?? ''
    if (sign === '(') depth++
    else if (sign === ')') {
      if (depth === 0) return at
      depth--
    } else if (sign === ',') {
      if (depth === 0) return at
    } else if (sign === '.' || sign === '-') {
      if (!/[A-Za-z0-9]/.test(next)) return at
    } else if (sign === '+') {
      if (/[0-9]/.test(next) || /^[xX]@/.test(text.slice(at + 1))) return at
    } else if (!/[A-Za-z0-9#/°øΔ]/.test(sign)) return at
  }
  return text.length
}
