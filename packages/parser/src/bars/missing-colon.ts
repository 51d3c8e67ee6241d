import { type BarContext, spanFrom } from './context.ts'

const BEATS_WITHOUT_COLON = /^(\d{1,2}(?:\s*-\s*\d{1,2})?(?:\s+in\s+\d{1,2})?)([.);]|\s)(?!\s*\d{1,2}\s*:)(?=\s*\S)/
const WORDS_WITHOUT_COLON = /^\s+(?:(\d{1,2})[.)]?\s+)?(\S.*)$/

const COUNTED_ALOUD = /^(\d{1,2})((?:\s*(?:&|\+|and|e|a))+)\s*:/
const BEATS_IN_WORDS = /^(\d{1,2})(\s*(?:to|until|through|and|[,&+/])\s*)(\d{1,2})\s*:/
const CUT_IN_WORDS = /^(\d{1,2}(?:\s*-\s*\d{1,2})?)\s*[^\d\s:@][^:@]*:(?=\s|$)/

/**
 * A beat line whose beats are named in another way (`1 & :`, `1 to 2:`), with the plain way in its place, so that no column moves;
 * that is reported. Null when it is none.
 */
function withPlainBeats(
  text: string,
  from: number,
  { offset, context }: { readonly offset: number; readonly context: BarContext },
): string | null {
  const line = text.slice(from)
  const tell = (length: number, message: string, beats: string): void => {
    const help = `write \`${text.slice(0, from)}${beats}:\``
    context.report({ code: 'unreadable-line', span: spanFrom(offset, from, from + length), message, help, once: true })
  }
  const aloud = COUNTED_ALOUD.exec(line)
  if (aloud !== null) {
    const [, beat = '', said = ''] = aloud
    tell(beat.length + said.length, 'a beat line is named by the number of its beat alone', beat)
    return `${text.slice(0, from)}${beat}${' '.repeat(said.length)}${line.slice(beat.length + said.length)}`
  }
  const range = BEATS_IN_WORDS.exec(line)
  if (range === null) return null
  const [, first = '', joint = '', last = ''] = range
  const length = first.length + joint.length + last.length
  tell(length, 'beats are named by the first and the last, with a dash between', `${first}-${last}`)
  return `${text.slice(0, from)}${first}-${' '.repeat(joint.length - 1)}${line.slice(first.length + joint.length)}`
}

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
  const named = withPlainBeats(text, from, { offset, context })
  if (named !== null) return named
  const match = CUT_IN_WORDS.test(text.slice(from)) ? null : BEATS_WITHOUT_COLON.exec(text.slice(from))
  if (match === null) return null
  const [, beats = '', sign = ''] = match
  const at = from + beats.length
  const span = spanFrom(offset, from, at + sign.trimEnd().length)
  const message = `there is no colon behind the beat`
  context.report({
    code: 'unreadable-line',
    span,
    message,
    help: `write \`${text.slice(0, from)}${beats}:\``,
    once: true,
  })
  return `${text.slice(0, at)}:${text.slice(at + 1)}`
}

/** The beat (null for the whole bar) and the words of a remark that lacks its colon; null when there are no words. */
export function remarkWithoutColon(rest: string): { readonly beat: number | null; readonly words: string } | null {
  const match = WORDS_WITHOUT_COLON.exec(rest)
  if (match === null) return null
  const beat = match[1] === undefined ? null : Number(match[1])
  return { beat, words: match[2] ?? '' }
}
