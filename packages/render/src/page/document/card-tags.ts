import { effortOfBars, type Lesson, type Part } from '@barwise/parser'
import type { StepCard } from '../../steps/part-steps.ts'
import type { PageWords } from './page-words.ts'

/** Tags a card shows besides its effort. */
const TECHNIQUES = 2

/** Cards whose tags end with the effort of their bar; at most three tags each. */
export function withEffort(
  cards: readonly StepCard[],
  { lesson, part, words }: { readonly lesson: Lesson; readonly part: Part; readonly words: PageWords },
): readonly StepCard[] {
  const efforts = effortOfBars(lesson, part)
  return cards.map((card) => {
    const effort = efforts.get(card.bar)
    const tags = card.tags.slice(0, TECHNIQUES)
    return effort === undefined ? card : { ...card, tags: [...tags, words.effort(effort)] }
  })
}
