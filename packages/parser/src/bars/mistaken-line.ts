import { nearestNames } from '../finding/nearest-names.ts'
import { startsBeatLine } from './beat-line.ts'
import { spanFrom } from './context.ts'
import { type LinePlace, type MeantMusic, meantAsMusic } from './mistaken-music.ts'

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
  ['note', 'say'],
  ['remark', 'say'],
  ['hint', 'say'],
  ['tip', 'say'],
])

/** What sections are called: common practice. */
const SECTION_LINE =
  /^((?:intro|verse|pre-?chorus|chorus|refrain|bridge|solo|interlude|middle eight|outro|coda)(?:\s+[\dA-Z]{1,2})?):?$/i
const HEADING_LINE = /^(?:#{1,6}|\*\*|__|\[)\s*([^\s#*_[\]][^#*_[\]]*)(?:#+|\*\*|__|\])?:?$/
const COMMENT_LINE = /^(?:<!--\s*(.*?)\s*(?:-->)?|\/\*\s*(.*?)\s*(?:\*\/)?|[;%]+\s*([^\s%].*))$/
const LIST_SIGN = /^(?:[-*+\u2022|]\s*)+(?=[A-Za-z\d])/

/**
 * A sign or word by which players write "the same again": the percent sign stands for the slanted stroke between two dots.
 * Common practice.
 */
export const SAME_AGAIN: RegExp = /^(?:%|\.\/\.|\/\/?|simile|sim\.?|ditto|same)$/i

/** What a line was meant to be. */
export type Meant =
  /** A keyword's line, its words from a column on. */
  | { readonly kind: 'keyword'; readonly keyword: Keyword; readonly from: number }
  | { readonly kind: 'section'; readonly name: string }
  | MeantMusic

/** Reports a line that begins with none of the keywords, once, and says what it was meant to be. */
export function reportMistakenLine(text: string, word: string, place: LinePlace): Meant {
  return (
    meantWithoutSign(text, place) ??
    meantAsProse(text, place) ??
    meantAsMusic(text, place) ??
    meantByWord(text, word, place)
  )
}

/** A line that is right but for what stands before it: the sign of a list, a `|`, the word "beat". */
function meantWithoutSign(text: string, { offset, context }: LinePlace): Meant {
  const beats = /^beats?\s*(?=\d)/i.exec(text)?.[0].length ?? 0
  if (beats > 0 && startsBeatLine(text.slice(beats))) {
    const word = /^[^\s:]+/.exec(text)?.[0] ?? ''
    const help = `write \`${text.slice(beats, text.indexOf(':') + 1)}\``
    const message = 'a beat line begins with the number of its beat'
    context.report({ code: 'unreadable-line', span: spanFrom(offset, 0, word.length), message, help })
    return { kind: 'line', from: beats }
  }
  const sign = LIST_SIGN.exec(text)?.[0] ?? ''
  if (sign === '') return null
  const rest = text.slice(sign.length)
  const first = /^[a-z]+/.exec(rest)?.[0] ?? ''
  if (!startsBeatLine(rest) && !KEYWORDS.some((known) => known === first)) return null
  const span = spanFrom(offset, 0, sign.trimEnd().length)
  const message = `no "${sign.trim()}" stands before a line of a part`
  context.report({ code: 'unreadable-line', span, message, help: 'delete it', once: true })
  return { kind: 'line', from: sign.length }
}

/** A line written as it would be in Markdown or in other kinds of text: a heading, a comment. */
function meantAsProse(text: string, { offset, context }: LinePlace): Meant {
  const span = spanFrom(offset, 0, text.length)
  const heading = (HEADING_LINE.exec(text) ?? SECTION_LINE.exec(text))?.[1]?.trim().replace(/\s?:$/, '')
  if (heading !== undefined) {
    const help = `write \`section ${shown(heading)}\`, or \`// ${shown(heading)}\` for a note to yourself`
    context.report({ code: 'unreadable-line', span, message: 'a heading inside a part is a section', help })
    return { kind: 'section', name: heading }
  }
  if (/^(?:`{3,}|~{3,})/.test(text)) {
    const message = 'this code fence has no other end around the lines of the part'
    context.report({ code: 'unreadable-line', span, message, help: 'delete it' })
    return { kind: 'comment' }
  }
  const quoted = /^"([^"]+)"$/.exec(text)?.[1]
  if (quoted !== undefined) {
    const help = `write \`say: ${shown(quoted)}\``
    context.report({ code: 'unreadable-line', span, message: 'words for the pupil follow `say:`', help })
    return { kind: 'comment' }
  }
  const comment = COMMENT_LINE.exec(text)
  if (comment === null || SAME_AGAIN.test(text)) return null
  const words = comment[1] ?? comment[2] ?? comment[3] ?? ''
  const help = `write \`// ${shown(words)}\``
  context.report({ code: 'unreadable-line', span, message: 'a comment begins with two slashes', help })
  return { kind: 'comment' }
}

/** A line whose first word is near a keyword, or means the same; otherwise nobody's guess. */
function meantByWord(text: string, word: string, { offset, context, open }: LinePlace): Meant {
  const span = spanFrom(offset, 0, Math.max(1, word.length))
  const joined = KEYWORDS.find((known) => new RegExp(`^${known}\\d`, 'i').test(word))
  if (joined !== undefined) {
    const message = `there is no space behind \`${joined}\``
    const help = `write \`${joined} ${word.slice(joined.length)}\``
    context.report({ code: 'unreadable-line', span, message, help })
    return { kind: 'keyword', keyword: joined, from: joined.length }
  }
  const near = SAME_THING.get(word.toLowerCase()) ?? nearestNames(word, KEYWORDS)[0]
  const keyword = KEYWORDS.find((known) => known === near)
  if (keyword !== undefined && goesOnAs(keyword, text)) {
    const message = `no line begins with "${word}"`
    context.report({ code: 'unreadable-line', span, message, help: `write \`${keyword}\`` })
    return { kind: 'keyword', keyword, from: word.length }
  }
  const whole = spanFrom(offset, 0, text.length)
  const [first = '', ...others] = text.split(/\s+/)
  if (SAME_AGAIN.test(first) && others.every((other) => other === first)) {
    const help =
      open !== null && open.bar > 1
        ? `write \`bar ${open.bar} = bar ${open.bar - 1}\` in place of both lines`
        : 'write the beats out: there is nothing before them'
    context.report({ code: 'unreadable-line', span: whole, message: `"${first}" does not repeat a bar`, help })
    return null
  }
  const help =
    others.length > 1 && /^[A-Za-z]{2,}/.test(first)
      ? 'write `say:` before words for the pupil, `//` before a note to yourself, or move it out of the part'
      : `begin it with a beat (\`2:\`) or one of ${KEYWORDS.join(', ')}`
  context.report({ code: 'unreadable-line', span: whole, message: 'this line cannot be read', help })
  return null
}

/** Whether a line goes on as those of a keyword do, so that its first word is no word of prose that only happens to be near. */
function goesOnAs(keyword: Keyword, text: string): boolean {
  if (keyword === 'say' || keyword === 'or') return text.includes(':')
  return keyword === 'section' || keyword === 'pickup' || /\d/.test(text)
}

function shown(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}
