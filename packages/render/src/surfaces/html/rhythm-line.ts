import type { Part } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { heardRhythm, type StepCard } from '../../steps/index.ts'
import { el, spoken } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** What parts two beats in the rhythm to say. */
const BEAT_MARK = ' | '

/**
 * The rhythm of a card to say aloud, each beat held together and a stroke between two; a screen reader hears it with a comma after
 * each beat. None for a card without one.
 */
export function rhythmLine(card: StepCard, part: Part, { lesson }: PageContext): readonly Element[] {
  const bar = part.bars.find(({ number }) => number === card.bar)
  if (card.rhythm === '' || bar === undefined) return []
  const beats = card.rhythm.split(BEAT_MARK).flatMap((beat, index) => {
    const held = el('span', 'beat', [beat])
    return index === 0 ? [held] : [' ', held]
  })
  return [el('p', 'rhythm', [spoken(heardRhythm(lesson, bar, card)), h('span', { ariaHidden: 'true' }, ...beats)])]
}
