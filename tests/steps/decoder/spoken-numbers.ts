const NUMBERS = (
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen ' +
  'eighteen nineteen twenty'
).split(' ')
const ORDINALS = ' first second third fourth fifth sixth seventh eighth ninth'.split(' ')

/** The pattern of a list of figures: `1–3`, `2`, `1, 2 and 4`. */
export const LIST = String.raw`(?:\d+–\d+|\d+(?:, \d+)*(?: and \d+)?)`

/** A number in words or figures. */
export function toNumber(word: string): number {
  const index = NUMBERS.indexOf(word.toLowerCase())
  return index >= 0 ? index : Number(word)
}

/** An ordinal: `third`, `12th`. */
export function toOrdinal(word: string): number {
  const index = ORDINALS.indexOf(word)
  return index > 0 ? index : Number.parseInt(word, 10)
}

/** The figures of a list. */
export function toList(text: string): number[] {
  const range = text.match(/^(\d+)–(\d+)$/)
  if (range === null) return text.split(/, | and /).map(Number)
  const [from, to] = [Number(range[1]), Number(range[2])]
  return Array.from({ length: to - from + 1 }, (_, i) => from + i)
}
