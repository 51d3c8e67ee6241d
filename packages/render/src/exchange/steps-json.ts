import type { Lesson } from '@barwise/parser'
import { type PartSteps, partPlainText, plainText, type StepCard, stepsOfPart } from '../steps/index.ts'

/** The version of the form; a reader of another version must not guess. */
const FORMAT = 1

/**
 * The steps of a lesson as JSON text (two spaces of indentation, a line end last), beside the score's own file and with its numbers:
 * bars, ticks from the start of a bar. Every key is always written and in the same order. `as` is null or the bar a card is told
 * by, with the shapes played in place of others, and the ticks up to which and from which it is the same; `told` and `chords` are
 * empty where there is nothing to say; `text` is plain, counts in single quotation marks.
 */
export function stepsJson(lesson: Lesson): string {
  const value = {
    format: FORMAT,
    title: lesson.settings.title,
    parts: lesson.parts.map((part) => {
      const steps = stepsOfPart(lesson, part)
      return {
        id: part.id,
        language: steps.language,
        form: plainText(steps.form, steps.andWord, steps.countMarks),
        count: plainText(steps.count, steps.andWord, steps.countMarks),
        cards: steps.cards.map((card) => cardValue(card, steps)),
        lines: steps.lines.map(({ bars, lead, text }) => ({
          from: bars.from,
          to: bars.to,
          text: `${lead} ${plainText(text, steps.andWord, steps.countMarks)}`,
        })),
        text: partPlainText(steps),
      }
    }),
  }
  return `${JSON.stringify(value, null, 2)}\n`
}

function cardValue(card: StepCard, { andWord, countMarks }: PartSteps): object {
  return {
    bar: card.bar,
    also: card.also,
    as: card.as,
    from: card.fromTicks,
    to: card.toTicks,
    told: card.asText,
    chords: plainText(card.chordText, andWord, countMarks),
    count: plainText(card.countText, andWord, countMarks),
    tags: card.tags,
    rhythm: card.rhythm,
    items: card.items.map((item) => ({
      kind: item.kind,
      label: item.label,
      from: item.fromTicks,
      to: item.toTicks,
      clauses: item.clauses.map(({ kind, fromTicks, toTicks, text }) => ({
        kind,
        from: fromTicks,
        to: toTicks,
        text: plainText(text, andWord, countMarks),
      })),
    })),
  }
}
