import type { Report } from '../finding/finding-draft.ts'
import { foldSigns } from '../source/fold-signs.ts'
import { plainLetters } from '../source/look-alikes.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { Span } from '../source/span.ts'

/** A word of a line in plain signs, with its place. */
export interface Word {
  readonly text: string
  readonly span: Span
}

/** The words of a line, spaces between them; a character that only looks like one of the language is read as that, and reported. */
export function wordsOf(line: SourceLine, report: Report): readonly Word[] {
  const folded = foldSigns(line.text)
  const plain = plainLetters(folded)
  if (plain !== null) {
    const { at, message, help } = plain.stranger
    const span = { start: line.offset + at, end: line.offset + at + 1 }
    report({ code: 'strange-character', span, message, help })
  }
  return [...(plain?.text ?? folded).matchAll(/\S+/g)].map((match) => ({
    text: match[0],
    span: { start: line.offset + match.index, end: line.offset + match.index + match[0].length },
  }))
}

/** From the start of the first word to the end of the last; null for no words. */
export function spanOfWords(words: readonly Word[]): Span | null {
  const first = words[0]
  const last = words.at(-1)
  return first && last ? { start: first.span.start, end: last.span.end } : null
}
