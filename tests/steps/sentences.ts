import { itemPlainText, type PartSteps, type StepCard } from '@barwise/render'

/** The sentences of a card's steps in order, remarks included. */
export function sentencesOf(card: StepCard, steps: PartSteps): readonly string[] {
  const text = card.items.map((item) => itemPlainText(item, steps)).join(' ')
  return text.split(/(?<=[.!?”]) (?=\p{Lu}|\p{N}|“)/u)
}

/** Words between spaces. */
export function wordsIn(sentence: string): number {
  return sentence.split(/\s+/).filter((word) => word !== '').length
}

/** Sentences that stand twice in a card, and those of more than so many words; remarks are the teacher's own. */
export function faultsOf(steps: PartSteps, most: number): readonly string[] {
  return steps.cards.flatMap((card) => {
    const sentences = sentencesOf(card, steps).filter((sentence) => !sentence.startsWith('“'))
    const twice = sentences.filter((sentence, i) => sentences.indexOf(sentence) < i)
    const long = sentences.filter((sentence) => wordsIn(sentence) > most)
    return [
      ...twice.map((sentence) => `${card.title}, twice: ${sentence}`),
      ...long.map((sentence) => `${card.title}, ${wordsIn(sentence)} words: ${sentence}`),
    ]
  })
}
