const NUMERALS: readonly (readonly [number, string])[] = [
  [100, 'c'],
  [90, 'xc'],
  [50, 'l'],
  [40, 'xl'],
  [10, 'x'],
  [9, 'ix'],
  [5, 'v'],
  [4, 'iv'],
  [1, 'i'],
]

/** A small roman numeral, as in `roman(14)` = `xiv`. */
export function roman(value: number): string {
  let rest = value
  let out = ''
  for (const [worth, letters] of NUMERALS) {
    while (rest >= worth) {
      out += letters
      rest -= worth
    }
  }
  return out
}
