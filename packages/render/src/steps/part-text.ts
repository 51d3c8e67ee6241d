import { cardPlainText, type PartSteps } from './part-steps.ts'
import { plainText } from './speak/rich-text.ts'

/**
 * The steps of a part as plain text for a screen reader, a Braille printer or an e-mail: the form, how it is counted, the cards
 * one after the other with a line a beat and the rhythm to say, then the bars that repeat others. Ends with a line feed.
 */
export function partPlainText(steps: PartSteps): string {
  const words = (text: Parameters<typeof plainText>[0]): string => plainText(text, steps.andWord, steps.countMarks)
  const cards = steps.cards.map((card) => `${cardPlainText(card, steps)}\n${card.rhythm}`)
  const lines = steps.lines.map((line) => `${line.lead} ${words(line.text)}`)
  const head = `${words(steps.form)}\n${words(steps.count)}`
  return `${[head, ...cards, ...(lines.length === 0 ? [] : [lines.join('\n')])].join('\n\n')}\n`
}
