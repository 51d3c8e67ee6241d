import { nearestNames } from '../finding/nearest-names.ts'
import type { Span } from '../source/span.ts'
import { BLOCK_NAMES, LEAF_DIRECTIVES } from './directive-names.ts'
import { INLINE_NAMES } from './inline-construct.ts'
import type { ProseContext } from './prose-context.ts'

/** A name with a label, at most two letters from one of ours, or one of ours whose label is not closed. */
const LABELLED = /(?<![\\:A-Za-z0-9]):([A-Za-z]{2,9})\[/g
/** One of ours with round brackets or braces for its square ones, or with a space. */
const OTHER_BRACKETS = /(?<![\\:A-Za-z0-9]):(shape|chord|bar)(?:[({]([^)}\n]{1,40})[)}]|[ \t]+(\S{1,40}))/g
/** What stands on a line of its own, in the middle of one, or with one colon. */
const PLACING = /(?<![\\:A-Za-z0-9]):{1,3}([A-Za-z]{2,9})(?:\[[^\]\n]{0,80}\]|\{[^}\n]{0,80}\})/g

/** Reports what looks like a reference or a placing line in a sentence and is not written as one. */
export function reportInlineNearMisses(span: Span, context: ProseContext): void {
  const source = context.text.slice(span.start, span.end)
  if (!source.includes(':')) return
  const told = new Set<number>()
  for (const match of source.matchAll(PLACING)) {
    const start = span.start + match.index
    if (onColonLine(start, context.text)) continue
    if (tellPlacing(match[0], match[1] ?? '', start, context))
      told.add(match.index + match[0].indexOf(match[1] ?? '') - 1)
  }
  for (const match of source.matchAll(OTHER_BRACKETS)) {
    const [whole, name = '', bracketed, spaced] = match
    const words = bracketed ?? spaced?.replace(/[.,;!?)]+$/, '') ?? ''
    const meant =
      bracketed !== undefined || (name === 'bar' ? /^\d+(?:-\d+)?$/.test(words) : context.shapeNames.has(words))
    if (!meant) continue
    const start = span.start + match.index
    const message = `what \`:${name}\` names stands in square brackets`
    const end =
      bracketed === undefined ? start + whole.indexOf(words, name.length + 1) + words.length : start + whole.length
    context.report({ code: 'block-misspelt', span: { start, end }, message, help: `write \`:${name}[${words}]\`` })
  }
  for (const match of source.matchAll(LABELLED)) {
    if (told.has(match.index)) continue
    const name = match[1] ?? ''
    const near = nearestNames(name, INLINE_NAMES)[0]
    if (near === undefined) continue
    const start = span.start + match.index
    const known = INLINE_NAMES.includes(name)
    context.report({
      code: known ? 'block-misspelt' : 'unknown-directive',
      span: { start, end: start + name.length + 1 },
      message: known ? `the bracket after \`:${name}\` is not closed` : `there is nothing called \`:${name}\``,
      help: known ? 'put `]` after the name, on the same line' : `write \`:${near}[...]\``,
    })
  }
}

/** Whether the line of a place begins with colons: then it is told of as a whole. */
function onColonLine(at: number, text: string): boolean {
  const before = text.slice(Math.max(0, at - 200), at)
  const line = before.slice(Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1)
  return /^[ \t>]*::/.test(`${line}${text.slice(at, at + 2)}`)
}

/** Whether a placing directive stands in a sentence, or a reference has too many colons; reports it when it does. */
function tellPlacing(written: string, name: string, start: number, { report }: ProseContext): boolean {
  const colons = /^:+/.exec(written)?.[0].length ?? 0
  const rest = written.slice(colons)
  const span = { start, end: start + written.length }
  if (INLINE_NAMES.includes(name) && colons > 1) {
    const message = `\`${name}\` stands in a sentence, with one colon`
    report({ code: 'block-misspelt', span, message, help: `write \`:${rest}\`` })
    return true
  }
  // Words such as `answer:{...}` are nobody's directive with one colon.
  if (!(colons === 1 ? LEAF_DIRECTIVES.has(name) : BLOCK_NAMES.includes(name))) return false
  const message = `\`${name}\` stands on a line of its own, with two colons`
  report({ code: 'block-misspelt', span, message, help: `write \`::${rest}\` on a line of its own` })
  return true
}
