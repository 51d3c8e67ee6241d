import type { BarRange, Lesson, Part } from '@barwise/parser'
import { inBarRange } from '../../engrave/in-bar-range.ts'
import type { PartSteps, StepCard } from '../../steps/part-steps.ts'
import { rhythmOf } from '../../steps/rhythm.ts'
import { withEffort } from './card-tags.ts'
import type { PageWords } from './page-words.ts'
import { plainPickup } from './plain-pickup.ts'

/** What is told of some bars of a part, in order. */
export interface ToldCards {
  /** A pickup told in a line, where it needs no card. */
  readonly pickup: StepCard | null
  /** Tagged with their effort; without a rhythm to say where nothing begins. */
  readonly cards: readonly StepCard[]
  /** Bars that need no card, a line each. */
  readonly lines: PartSteps['lines']
}

/** The cards and lines of the bars asked for, of all when null: the same on every surface. */
export function toldCards(
  { part, bars }: { readonly part: Part; readonly bars: BarRange | null },
  steps: PartSteps,
  { lesson, words }: { readonly lesson: Lesson; readonly words: PageWords },
): ToldCards {
  const asked = steps.cards.filter((card) => inBarRange(card.bar, bars))
  const tagged = withEffort(asked, { lesson, part, words }).map((card) => withRhythm(card, part))
  const pickup = plainPickup(part, tagged)
  return {
    pickup,
    cards: tagged.filter((card) => card !== pickup),
    lines: steps.lines.filter((line) => bars === null || (line.bars.from <= bars.to && line.bars.to >= bars.from)),
  }
}

/** The card, its rhythm left out where nothing begins in what it shows. */
function withRhythm(card: StepCard, part: Part): StepCard {
  const bar = part.bars.find(({ number }) => number === card.bar)
  const begins =
    bar !== undefined && rhythmOf(bar, card).some(({ sound }) => sound.kind !== 'hold' && sound.kind !== 'rest')
  return begins ? card : { ...card, rhythm: '' }
}
