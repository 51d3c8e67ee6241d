import type { Bar, BarRange, Part } from '@barwise/parser'
import { inBarRange } from '../../engrave/in-bar-range.ts'
import { distinctBars } from '../../steps/cards.ts'

/** A bar whose strip is shown, and the numbers of the bars that it stands for, its own first. */
export interface StripBar {
  readonly bar: Bar
  readonly stands: readonly number[]
}

/** The bars of which a strip is shown: each that is asked for; of a whole part each that differs from those before it. */
export function stripBars(part: Part, range: BarRange | null): readonly StripBar[] {
  const asked =
    range === null
      ? distinctBars(part).map(({ bar, also }) => [bar, ...also])
      : part.bars.filter(({ number }) => inBarRange(number, range)).map(({ number }) => [number])
  return asked.flatMap((stands) => {
    const bar = part.bars.find(({ number }) => number === stands[0])
    return bar === undefined ? [] : [{ bar, stands }]
  })
}
