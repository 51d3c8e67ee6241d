/** A piece as line breaking sees it, in staff spaces. */
export interface LineItem {
  readonly least: number
  readonly natural: number
  /** Counts as a bar; a pickup does not. */
  readonly bar: boolean
}

/** The room of a line: `head` is what stands before its first piece, by the index of that piece. */
export interface LineRoom {
  readonly width: number
  head(first: number): number
  /** What stands after its last piece, by the index of the piece that follows. */
  tail(next: number): number
}

/** Index of the first piece of each line. */
export type LineStarts = readonly number[]

/** How wrong a line is: stretched or squeezed, both grow by the square; squeezing is worse. Judgement. */
function badness(ratio: number): number {
  return ratio >= 1 ? (ratio - 1) ** 2 : 4 * (1 / ratio - 1) ** 2
}

/**
 * Breaks the pieces into lines by least badness over the whole part: each line as near its natural width as can be, neighbours evenly
 * dense, and no line of one bar after lines of several where another way is open. A piece wider than the line stands alone.
 */
export function breakLines(items: readonly LineItem[], room: LineRoom): LineStarts {
  interface Best {
    readonly cost: number
    readonly from: number
    readonly ratio: number
    readonly bars: number
    readonly before: Best | null
  }
  const ending: Best[][] = [[{ cost: 0, from: 0, ratio: 1, bars: 0, before: null }]]
  for (let end = 1; end <= items.length; end += 1) {
    const found: Best[] = []
    let [natural, least, bars] = [0, 0, 0]
    for (let from = end - 1; from >= 0; from -= 1) {
      const item = items[from]
      if (item === undefined) break
      natural += item.natural
      least += item.least
      bars += item.bar ? 1 : 0
      const inner = room.width - room.head(from) - room.tail(end)
      if (least > inner && from < end - 1) break
      const last = end === items.length
      const ratio = Math.max(inner / natural, 0.5)
      const own = least > inner ? 40 : last && ratio > 1 ? 0.04 * Math.min(4, ratio - 1) : badness(ratio)
      const lonely = bars === 0 ? 3 : 0
      let best: Best | null = null
      for (const before of ending[from] ?? []) {
        const first = before.before === null && from === 0
        const even = first || (last && ratio > before.ratio) ? 0 : 0.5 * (ratio - before.ratio) ** 2
        const alone = !first && bars === 1 && before.bars >= 2 ? (last ? 0.35 * (before.bars - 1) : 0.6) : 0
        const cost = before.cost + own + lonely + even + alone
        if (best === null || cost < best.cost) best = { cost, from, ratio, bars, before }
      }
      if (best !== null) found.push(best)
    }
    ending.push(found)
  }
  let last: Best | null = (ending[items.length] ?? []).reduce<Best | null>(
    (a, b) => (a === null || b.cost < a.cost ? b : a),
    null,
  )
  const starts: number[] = []
  while (last !== null && last.before !== null) {
    starts.unshift(last.from)
    last = last.before
  }
  return starts
}
