import { type BarContext, spanFrom } from './context.ts'

const BEATS_WITHOUT_COLON = /^(\d{1,2}(?:\s*-\s*\d{1,2})?(?:\s+in\s+\d{1,2})?)([.);]|\s)(?!\s*\d{1,2}\s*:)(?=\s*\S)/
const WORDS_WITHOUT_COLON = /^\s+(?:(\d{1,2})[.)]?\s+)?(\S.*)$/

/**
 * A beat line that lacks its colon, with one in the place of the space or point behind its beat, so that no column moves; that is
 * reported. Null when the line is none.
 *
 * @param from where the beat begins: behind `or`, if any.
 */
export function withBeatColon(
  text: string,
  from: number,
  { offset, context }: { readonly offset: number; readonly context: BarContext },
): string | null {
  const match = BEATS_WITHOUT_COLON.exec(text.slice(from))
  if (match === null) return null
  const [, beats = '', sign = ''] = match
  const at = from + beats.length
  const span = spanFrom(offset, from, at + sign.trimEnd().length)
  const message = `there is no colon behind the beat`
  context.report({ code: 'unreadable-line', span, message, help: `write \`${text.slice(0, from)}${beats}:\`` })
  return `${text.slice(0, at)}:${text.slice(at + 1)}`
}

/** The beat (null for the whole bar) and the words of a remark that lacks its colon; null when there are no words. */
export function remarkWithoutColon(rest: string): { readonly beat: number | null; readonly words: string } | null {
  const match = WORDS_WITHOUT_COLON.exec(rest)
  if (match === null) return null
  const beat = match[1] === undefined ? null : Number(match[1])
  return { beat, words: match[2] ?? '' }
}
