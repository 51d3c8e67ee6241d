import type { Bar } from './part.ts'
import type { Ticks } from './time.ts'

/** Where a bar starts on the one line of time of its part: ticks from the start of bar 1; a pickup lies before 0. */
export function barStart({ number, start, length }: Pick<Bar, 'number' | 'start' | 'length'>): Ticks {
  return number === 0 ? -length : start
}
