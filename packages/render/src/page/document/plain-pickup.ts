import type { Part } from '@barwise/parser'
import type { StepCard } from '../../steps/part-steps.ts'
import { plain, type RichText } from '../../steps/speak/rich-text.ts'

/**
 * The card of a pickup of scratches and silences alone, among the cards; null when there is none. It is told in a line, as in
 * "Pickup Scratch down and up on &.": the play-through shows all there is to see.
 */
export function plainPickup(part: Part, cards: readonly StepCard[]): StepCard | null {
  const bar = part.bars.find((candidate) => candidate.number === 0)
  const bare = bar !== undefined && bar.remarks.length === 0 && bar.events.every((event) => event.kind !== 'strike')
  return bare ? (cards.find((card) => card.bar === 0) ?? null) : null
}

/** All that a card tells, in one run of words. */
export function cardInOneLine(card: StepCard): RichText {
  return card.items
    .flatMap((item) => item.clauses)
    .flatMap((clause, index) => (index === 0 ? clause.text : [plain(' '), ...clause.text]))
}
