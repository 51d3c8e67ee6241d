import { nearestNames } from '../finding/nearest-names.ts'
import { startsBeatLine } from './beat-line.ts'
import { type BarContext, spanFrom } from './context.ts'

/** Words that begin a line of a part. */
export const KEYWORDS = ['pickup', 'bar', 'from', 'section', 'or', 'say', 'repeat', 'ending'] as const
export type Keyword = (typeof KEYWORDS)[number]

/** Other words of the trade for what a line begins with: common practice. */
const SAME_THING: ReadonlyMap<string, Keyword> = new Map([
  ['measure', 'bar'],
  ['measures', 'bar'],
  ['upbeat', 'pickup'],
  ['anacrusis', 'pickup'],
  ['volta', 'ending'],
])

/** What a line was meant to be: a beat line that begins at `from`, a keyword to be read as usual, or nobody's guess. */
export type Meant =
  | { readonly kind: 'beats'; readonly from: number }
  | { readonly kind: 'keyword'; readonly keyword: Keyword }
  | null

/** Reports a line that begins with none of the keywords, once, and says what it was meant to be. */
export function reportMistakenLine(
  text: string,
  word: string,
  { offset, context }: { readonly offset: number; readonly context: BarContext },
): Meant {
  const span = spanFrom(offset, 0, Math.max(1, word.length))
  const beats = /^beats?\s*(?=\d)/i.exec(text)?.[0].length ?? 0
  if (beats > 0 && startsBeatLine(text.slice(beats))) {
    const help = `write \`${text.slice(beats, text.indexOf(':') + 1)}\``
    context.report({ code: 'unreadable-line', span, message: 'a beat line begins with the number of its beat', help })
    return { kind: 'beats', from: beats }
  }
  const near = SAME_THING.get(word.toLowerCase()) ?? nearestNames(word, KEYWORDS)[0]
  const keyword = KEYWORDS.find((known) => known === near)
  if (keyword === undefined) {
    const help = `begin it with a beat (\`2:\`) or one of ${KEYWORDS.join(', ')}`
    const whole = spanFrom(offset, 0, text.length)
    context.report({ code: 'unreadable-line', span: whole, message: 'this line cannot be read', help })
    return null
  }
  const message = `no line begins with "${word}"`
  context.report({ code: 'unreadable-line', span, message, help: `write \`${keyword}\`` })
  return { kind: 'keyword', keyword }
}
