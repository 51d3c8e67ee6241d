import type { Span } from '../source/span.ts'
import { type BarContext, spanFrom } from './context.ts'
import { readSign } from './read-sign.ts'
import type { StrokeSign } from './stroke-sign.ts'

/**
 * One sign or bracket of a beat line, or a `|` between beats. `slots` says how many slots it takes; a bracket that could not
 * be read has no signs.
 */
export type RunItem =
  | { readonly kind: 'sign'; readonly signs: readonly [StrokeSign]; readonly slots: 1; readonly span: Span }
  | { readonly kind: 'bracket'; readonly signs: readonly StrokeSign[]; readonly slots: number; readonly span: Span }
  | { readonly kind: 'beat-bar'; readonly span: Span }

/**
 * Cuts the signs of a beat line apart and reads each; brackets that are not closed or empty are reported.
 *
 * @param written the line with plain signs for typographic ones.
 * @param from the column where its signs begin.
 * @param offset where `text` stands in the file.
 */
export function readSignRun(
  written: string,
  from: number,
  line: { offset: number; context: BarContext },
): readonly RunItem[] {
  const text = withRoundBrackets(written, from, line)
  const items: RunItem[] = []
  let at = from
  while (at < text.length) {
    const letter = text[at] ?? ''
    if (/\s/.test(letter)) at++
    else if (letter === '|') {
      items.push({ kind: 'beat-bar', span: spanFrom(line.offset, at, at + 1) })
      at++
    } else if (letter === '(') {
      const bracket = readBracket(text, at, line)
      items.push(bracket.item)
      at = bracket.end
    } else {
      const end = signEnd(text, at)
      const sign = readSign(text.slice(at, end), line.offset + at, line.context)
      items.push({ kind: 'sign', signs: [sign], slots: 1, span: sign.span })
      at = end
    }
  }
  return items
}

/** The line with round brackets for square or curly ones, which are reported once. */
function withRoundBrackets(
  text: string,
  from: number,
  { offset, context }: { offset: number; context: BarContext },
): string {
  const at = text.slice(from).search(/[[{]/)
  if (at < 0) return text
  const span = spanFrom(offset, from + at, from + at + 1)
  const message = 'signs that share a slot stand in round brackets'
  context.report({ code: 'unreadable-stroke', span, message, help: 'write `(` here and `)` at the end', once: true })
  return text.slice(0, from) + text.slice(from).replace(/[[{]/g, '(').replace(/[\]}]/g, ')')
}

/** Where a sign ends: at a space, a `|`, or a closing bracket that it did not open itself. */
function signEnd(text: string, start: number): number {
  let depth = 0
  let at = start
  for (; at < text.length; at++) {
    const letter = text[at] ?? ''
    if (letter === '(') depth++
    else if (letter === ')') {
      if (depth === 0) return at === start ? at + 1 : at
      depth--
    } else if (/[\s|]/.test(letter)) return at
  }
  return at
}

function readBracket(
  text: string,
  start: number,
  { offset, context }: { offset: number; context: BarContext },
): { readonly item: RunItem; readonly end: number } {
  const signs: StrokeSign[] = []
  let at = start + 1
  while (at < text.length && text[at] !== ')') {
    if (/\s/.test(text[at] ?? '')) {
      at++
      continue
    }
    if (text[at] === '|') {
      const span = spanFrom(offset, at, at + 1)
      const help = 'take it away, or close the bracket before it'
      context.report({ code: 'misplaced-beat-bar', span, message: 'a `|` cannot stand inside a bracket', help })
      at++
      continue
    }
    const end = signEnd(text, at)
    signs.push(readSign(text.slice(at, end), offset + at, context))
    at = Math.max(end, at + 1)
  }
  const closed = text[at] === ')'
  const after = /^\S*/.exec(text.slice(at + 1))?.[0] ?? ''
  const end = closed ? at + 1 + after.length : text.length
  const span = spanFrom(offset, start, end)
  const slots = after === '' ? 1 : /^[1-9]\d{0,2}$/.test(after) ? Number(after) : null
  const fault = !closed
    ? { message: 'a round bracket is not closed', help: 'add `)` after its last sign' }
    : signs.length === 0
      ? { message: 'a round bracket holds no sign', help: 'put signs between the brackets' }
      : slots === null
        ? { message: `"${after}" cannot follow a bracket`, help: 'write how many slots it takes, as in `(x x x)2`' }
        : null
  if (fault !== null) {
    context.report({ code: 'unreadable-stroke', span, ...fault })
    return { item: { kind: 'bracket', signs: [], slots: 1, span }, end }
  }
  return { item: { kind: 'bracket', signs, slots: slots ?? 1, span }, end }
}
