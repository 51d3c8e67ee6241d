import type { Part } from '@barwise/parser'
import type { PageWords } from './page-words.ts'

/** A sentence on a part's form, as in "eight bars, twice through; the pickup the first time only". Starts small, no full stop. */
export function aboutPart(part: Part, words: PageWords): string {
  const numbered = part.bars.filter((bar) => bar.number > 0)
  const first = numbered[0]?.number ?? 1
  const last = numbered.at(-1)?.number ?? first
  const hasPickup = part.bars.some((bar) => bar.number === 0)
  const whole = part.repeats.find((repeat) => repeat.from === first && reach(repeat) === last)
  const counted = words.bars(numbered.length)
  if (whole !== undefined) {
    const ending = whole.endings.length > 0 ? `, ${words.endings}` : ''
    return `${counted}, ${words.through(whole.times)}${ending}${hasPickup ? `; ${words.pickupOnce}` : ''}`
  }
  const said = part.repeats.slice(0, 2).map((repeat) => words.repeated(repeat.from, reach(repeat), repeat.times))
  const opening = hasPickup ? `${counted} ${words.withPickup}` : counted
  return said.length === 0 ? opening : `${opening}; ${said.join('; ')}`
}

/** The last bar that belongs to a repeat, its endings included. */
function reach(repeat: Part['repeats'][number]): number {
  return Math.max(repeat.to, ...repeat.endings.map((ending) => ending.to))
}
