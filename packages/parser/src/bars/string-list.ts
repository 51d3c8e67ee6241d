import { counted } from './context.ts'

/** Strings as written after `@`: those named alone, and those of ranges. Null when the text is no list of strings. */
export interface StringList {
  readonly alone: readonly number[]
  readonly ranged: readonly number[]
}

/**
 * Reads `1`, `1,2`, `1-3` and lists of them; null when it is none.
 *
 * @example parseStringList('1-3,5') // { alone: [5], ranged: [1, 2, 3] }
 */
export function parseStringList(text: string): StringList | null {
  const alone: number[] = []
  const ranged: number[] = []
  for (const entry of text.split(',')) {
    const match = /^(\d{1,2})(?:-(\d{1,2}))?$/.exec(entry)
    if (match === null) return null
    const first = Number(match[1])
    if (match[2] === undefined) {
      alone.push(first)
      continue
    }
    const low = Math.min(first, Number(match[2]))
    const high = Math.max(first, Number(match[2]))
    for (let string = low; string <= high; string++) ranged.push(string)
  }
  return { alone, ranged }
}

/** All strings of a list, each once, highest number first. */
export function stringsOf(list: StringList): readonly number[] {
  return [...new Set([...list.alone, ...list.ranged])].sort((a, b) => b - a)
}

/** The first string of a list that the instrument does not have, null when it has them all. */
export function missingString(list: StringList, strings: number): number | null {
  return stringsOf(list).find((string) => string < 1 || string > strings) ?? null
}

/** The help for a string that does not exist. */
export function stringHelp(strings: number): string {
  return `name a string from 1 (nearest the floor) to ${strings}: the instrument has ${counted(strings, 'string')}`
}
