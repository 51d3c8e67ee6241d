import type { FindingDraft } from '../finding/finding-draft.ts'
import { gridOf, handStrokes } from '../hand/strum-speed.ts'
import type { Rule } from './rule.ts'

/** A grid finer than anything played makes the hand look busier than it is. */
export const gridFinerThanPlayed: Rule = {
  codes: ['grid-finer-than-played'],
  check: ({ lesson }) =>
    lesson.parts.flatMap((part): readonly FindingDraft[] => {
      const bars = part.bars.filter((bar) => bar.stroke === 'alternate' && handStrokes(bar).length > 0)
      const first = bars[0]
      if (first === undefined || first.grid === 4 || bars.some((bar) => bar.grid !== first.grid)) return []
      // What the fretting hand sounds alone, a rest and another way to play need their slots to be written too.
      const grids = part.bars.flatMap((bar) => [bar, ...bar.alternatives].map(({ events }) => gridOf(events, bar)))
      const needed = grids.reduce<number>((finest, grid) => Math.max(finest, grid), 4)
      if (needed >= first.grid) return []
      const words: Readonly<Record<number, string>> = { 4: 'quarters', 8: 'eighths', 16: 'sixteenths' }
      return [
        {
          span: first.span,
          code: 'grid-finer-than-played',
          message: `${part.title} has a grid of ${first.grid} but every stroke falls on ${words[needed]}`,
          help: `write \`grid=${needed}\` if your hand swings in ${words[needed]}`,
        },
      ]
    }),
}
