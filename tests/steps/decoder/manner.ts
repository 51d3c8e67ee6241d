import type { Count } from './decoded.ts'
import { toNumber } from './spoken-numbers.ts'

/** The pattern of a place in a bar: `on ‘a’ of 2`, `on the third`, `just after ‘e’`. */
export const PLACE = String.raw`(?:on the ‘\w+’ of \d+|on ‘\w+’|on \d+|on the \w+ of the outer \w+|on the \w+ part|on the \w+ of \w+ in beat \d+|on the \w+ in beat \d+|on the \w+|just after the ‘\w+’ of \d+|just after ‘\w+’|just after \d+)`

/** How something is played: directions, place, slide, marks. */
export interface Manner {
  readonly place: string | undefined
  readonly strokes: readonly string[]
  /** The fret that a string slides from, null for just below, undefined where it does not slide. */
  readonly slide: (string: number, fret: number) => number | null | undefined
  readonly marks: string[]
  readonly palmMuted: boolean
  readonly rolled: boolean
}

const MARKS = [
  [', (?:each )?with an accent', 'accent'],
  [', (?:each )?softly', 'ghost'],
  [', (?:each )?short', 'short'],
  [', (?:each )?with vibrato', 'vibrato'],
] as const

/** Reads directions, place, slide, marks and length in the order in which they are said; throws where something is left over. */
export function readManner(words: string, verb: string, style: Count['style']): Manner {
  let rest = words.trim()
  const take = (pattern: string): RegExpMatchArray | null => {
    const match = rest.match(new RegExp(`^(?:${pattern})`))
    if (match !== null) rest = rest.slice(match[0].length).trim()
    return match
  }
  // A sound that lasts slides away at its end.
  const slidesOff = /, then slide away/.test(rest)
  rest = rest.replace(/, then slide away/, '')
  const strokes = takeStrokes(take, verb === 'pluck' || style === 'pluck' ? 'pluck' : 'down')
  const place = take(PLACE)?.[0]
  const slide = takeSlide(take)
  const palmMuted = take(', palm-muted') !== null
  const rolled = take(', (?:each )?rolled string by string') !== null
  const marks: string[] = slidesOff ? ['slide-off'] : []
  for (let before = -1; before < marks.length; ) {
    before = marks.length
    for (const [said, mark] of MARKS) if (take(said) !== null) marks.push(mark)
  }
  take('; nothing strikes (?:it|them)')
  if (take('; let it ring(?: through [^;]*| over the bar line)?') !== null) marks.push('ring')
  take('; (?:let it last|hold it(?= *$)|hold it through [^;]*|hold it over the bar line)')
  if (rest !== '') throw new Error(`left over: ${rest} (of ${words})`)
  return { place, strokes, slide, marks: marks.sort(), palmMuted, rolled }
}

type Take = (pattern: string) => RegExpMatchArray | null

function takeStrokes(take: Take, normal: string): readonly string[] {
  const regular = take(String.raw`(\w+) times, (down|up) first`)
  if (regular !== null) {
    const other = regular[2] === 'down' ? 'up' : 'down'
    return Array.from({ length: toNumber(regular[1]!) }, (_, i) => (i % 2 === 0 ? regular[2]! : other))
  }
  const alike = take(String.raw`(down|up) (?:(twice)|(\w+) times)(?=$|[ ,;])`)
  if (alike !== null) {
    return Array.from({ length: alike[2] === undefined ? toNumber(alike[3]!) : 2 }, () => alike[1]!)
  }
  const times = take(String.raw`(?:(once|twice)|(\w+) times)(?=$|[ ,;])`)
  if (times !== null) {
    const n = times[1] === 'once' ? 1 : times[1] === 'twice' ? 2 : toNumber(times[2]!)
    return Array.from({ length: n }, () => normal)
  }
  const turns = take('(?:down|up)(?:(?:, | and )(?:down|up))*(?=$|[ ,;])')
  return turns === null ? [normal] : turns[0].split(/, | and /)
}

function takeSlide(take: Take): Manner['slide'] {
  if (take('and slide up into place from just below') !== null) return () => null
  const by = take(String.raw`and slide in from (\w+) frets? (below|above)`)
  if (by !== null) return (_, fret) => fret - toNumber(by[1]!) * (by[2] === 'below' ? 1 : -1)
  // Which strings slide, and from where, follows in a sentence of its own.
  take('and slide into place')
  return () => undefined
}
