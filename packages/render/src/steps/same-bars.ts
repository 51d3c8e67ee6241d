import type { Bar, Part } from '@barwise/parser'

/** Bars that need no card: single ones that are another bar again, or a run that repeats a run. */
export type SameBars =
  | { readonly kind: 'bars'; readonly bars: readonly number[]; readonly as: number }
  | {
      readonly kind: 'run'
      readonly from: number
      readonly to: number
      readonly as: { readonly from: number; readonly to: number }
    }

/** A run is named as one from four bars on: shorter ones read better bar by bar. */
const SHORTEST_RUN = 4

/** The bars without a card, in the order of their first: "Bars 3, 5, 7 are bar 1", "Bars 9 to 12 repeat bars 5 to 8". */
export function findSameBars(part: Part): readonly SameBars[] {
  const bars = part.bars.filter((bar) => bar.number > 0)
  const lines: SameBars[] = []
  const singles = new Map<number, number[]>()
  for (let i = 0; i < bars.length; ) {
    const bar = bars[i]
    if (bar === undefined) break
    if (bar.sameAs === null) {
      i++
      continue
    }
    const run = longestRun(bars, i)
    if (run !== null) {
      lines.push(run.line)
      i += run.covered
      continue
    }
    const listed = singles.get(bar.sameAs)
    if (listed === undefined) {
      const list = [bar.number]
      singles.set(bar.sameAs, list)
      lines.push({ kind: 'bars', bars: list, as: bar.sameAs })
    } else listed.push(bar.number)
    i++
  }
  return lines
}

/** What a bar sounds like: the number of the first bar that sounds so. */
function sound(bar: Bar | undefined): number | null {
  return bar === undefined ? null : (bar.sameAs ?? bar.number)
}

/** The longest run from index `i` on that repeats bars before it, once or several times over. */
function longestRun(bars: readonly Bar[], i: number): { readonly line: SameBars; readonly covered: number } | null {
  let best: { line: SameBars; covered: number } | null = null
  for (let start = 0; start < i; start++) {
    const period = i - start
    let n = 0
    while (bars[i + n]?.sameAs != null && sound(bars[i + n]) === sound(bars[start + n])) n++
    const covered = n > period ? n - (n % period) : n
    if (covered < SHORTEST_RUN || covered <= (best?.covered ?? 0)) continue
    const length = Math.min(period, covered)
    const from = bars[i]?.number ?? 0
    const source = bars[start]?.number ?? 0
    best = {
      covered,
      line: {
        kind: 'run',
        from,
        to: from + covered - 1,
        as: { from: source, to: source + length - 1 },
      },
    }
  }
  return best
}
