import type { Bar, Part, Repeat, Ticks } from '@barwise/parser'

/** A bar in the order of playing. */
export interface PlayedBar {
  readonly bar: Bar
  /** Its place among the bars of the part. */
  readonly index: number
  /** Ticks from the first sound of the part, pickup included. */
  readonly start: Ticks
}

/**
 * The bars of a part as they are played: repeats as often as they say, each time with its own ending.
 *
 * @example bars 1 2 3, bars 1-2 repeated with bar 2 as first and bar 3 as second ending: 1 2 1 3
 */
export function playedBars({ bars, repeats }: Part): readonly PlayedBar[] {
  const order: number[] = []
  const place = new Map(bars.map(({ number }, index) => [number, index]))
  for (let index = 0; index < bars.length; ) {
    const repeat = repeats.find(({ from }) => from === bars[index]?.number)
    if (repeat === undefined) {
      order.push(index)
      index += 1
      continue
    }
    for (const number of playedRepeat(repeat)) {
      const at = place.get(number)
      if (at !== undefined) order.push(at)
    }
    const last = Math.max(repeat.to, ...repeat.endings.map(({ to }) => to))
    index = (place.get(last) ?? bars.length) + 1
  }
  let start = 0
  return order.flatMap((index) => {
    const bar = bars[index]
    if (bar === undefined) return []
    const played = { bar, index, start }
    start += bar.length
    return [played]
  })
}

/** The numbers of the bars of a repeat, all times. */
function playedRepeat({ from, to, times, endings }: Repeat): readonly number[] {
  const common = range(from, endings[0] === undefined ? to : endings[0].from - 1)
  return Array.from({ length: times }, (_, i) => i + 1).flatMap((time) => {
    const ending = endings.find(({ numbers }) => numbers.includes(time))
    return ending === undefined ? common : [...common, ...range(ending.from, ending.to)]
  })
}

function range(from: number, to: number): readonly number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i)
}
