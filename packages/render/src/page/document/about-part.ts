import type { Part } from '@barwise/parser'
import type { PageWords } from './page-words.ts'

/** A sentence on a part's form, as in "eight bars, twice through; the pickup the first time only". Starts small, no full stop. */
export function aboutPart(part: Part, words: PageWords): string {
  const numbered = part.bars.filter((bar) => bar.number > 0)
  const first = numbered[0]?.number ?? 1
  const last = numbered.at(-1)?.number ?? first
  const spanning = part.repeats.find((repeat) => repeat.from === first && reach(repeat) === last)
  return words.about({
    bars: numbered.length,
    pickup: part.bars.some((bar) => bar.number === 0),
    whole: spanning === undefined ? null : { times: spanning.times, endings: spanning.endings.length > 0 },
    repeats:
      spanning !== undefined
        ? []
        : part.repeats.slice(0, 2).map((repeat) => ({ from: repeat.from, to: reach(repeat), times: repeat.times })),
  })
}

/** The last bar that belongs to a repeat, its endings included. */
function reach(repeat: Part['repeats'][number]): number {
  return Math.max(repeat.to, ...repeat.endings.map((ending) => ending.to))
}
