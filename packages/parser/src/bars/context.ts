import type { Report } from '../finding/finding-draft.ts'
import type { Instrument } from '../score/instrument.ts'
import type { Shape } from '../score/shape.ts'
import type { Span } from '../source/span.ts'
import type { SignMeaning } from './stroke-sign.ts'

/** What every reader of a part's lines needs. */
export interface BarContext {
  readonly instrument: Instrument
  readonly shapes: ReadonlyMap<string, Shape>
  /** Names of shapes whose line could not be read as written: nothing is said of the strokes that play them. */
  readonly brokenShapes: ReadonlySet<string>
  readonly report: Report
  /** What signs mean that have been read without a fault, by their text: a part says the same few signs over and over. */
  readonly meanings: Map<string, SignMeaning>
}

/** A stretch of a line by its first and last column. */
export function spanFrom(offset: number, start: number, end: number): Span {
  return { start: offset + start, end: offset + end }
}

/** `1 sign`, `2 signs`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}

/** `beat 2`, `beats 3-4`. */
export function beatName(first: number, last: number): string {
  return first === last ? `beat ${first}` : `beats ${first}-${last}`
}
