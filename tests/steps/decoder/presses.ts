import type { Frets } from './decoded.ts'
import { LIST, toList } from './spoken-numbers.ts'

/** Reads "finger 1 at fret 7 on string 3 and open string 1" onto the frets given; throws where something else is said. */
export function readPresses(words: string, onto: Frets): Map<number, number | null> {
  const frets = new Map(onto)
  const all = (list: string | undefined, fret: number | null): void => {
    for (const string of toList(list!)) frets.set(string, fret)
  }
  const patterns: [RegExp, (match: RegExpMatchArray) => void][] = [
    [
      /^(?:finger \d|the thumb) across fret (\d+) from string (\d+) to string (\d+)/i,
      (m) => {
        for (let string = Number(m[2]); string >= Number(m[3]); string--) frets.set(string, Number(m[1]))
      },
    ],
    [
      new RegExp(`^(?:(?:finger \\d|the thumb) )?(?:at |onto |to )?fret (\\d+) on strings? (${LIST})`, 'i'),
      (m) => all(m[2], Number(m[1])),
    ],
    [new RegExp(`^(?:to )?open strings? (${LIST})`, 'i'), (m) => all(m[1], 0)],
    [new RegExp(`^dead strings? (${LIST})`, 'i'), (m) => all(m[1], null)],
    [
      new RegExp(`^strings? (${LIST}) silent`, 'i'),
      (m) => {
        for (const string of toList(m[1]!)) frets.delete(string)
      },
    ],
  ]
  let rest = words
  while (rest !== '') {
    const found = patterns.map(([pattern, apply]) => ({ match: rest.match(pattern), apply })).find((one) => one.match)
    if (found === undefined) throw new Error(`no strings and frets in: ${rest}`)
    found.apply(found.match!)
    rest = rest.slice(found.match![0].length).replace(/^(?:, | and )/, '')
  }
  return frets
}

/** Frets moved along the neck; open and dead strings stay. */
export function movedFrets(frets: Frets, by: number): Map<number, number | null> {
  return new Map([...frets].map(([string, fret]) => [string, fret === null || fret === 0 ? fret : fret + by]))
}

/** The frets of some strings only. */
export function onlyStrings(frets: Frets, strings: readonly number[]): Map<number, number | null> {
  return new Map([...frets].filter(([string]) => strings.includes(string)))
}
