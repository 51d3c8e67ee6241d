import { foldSigns } from '../source/fold-signs.ts'
import type { Span } from '../source/span.ts'

/** One `key=value` of a directive, or its `#id` (key `id`). */
export interface WrittenAttribute {
  readonly key: string
  /** Plain signs; what stands in quotes is kept as typed. */
  readonly value: string
  readonly keySpan: Span
  readonly valueSpan: Span
  /** Whether the value stands in quotes. */
  readonly quoted: boolean
  /** Whether it is not written as an attribute is, so that a piece in `strays` tells of it; it is read as most likely meant. */
  readonly strayed: boolean
}

/** A piece of a directive that is no attribute. */
export interface StrayText {
  readonly text: string
  readonly span: Span
}

/** What follows the name of a directive. */
export interface DirectiveText {
  /** The text between square brackets, null when there are none. */
  readonly label: { readonly text: string; readonly span: Span } | null
  readonly attributes: readonly WrittenAttribute[]
  readonly strays: readonly StrayText[]
  /** Commas and semicolons between attributes. */
  readonly commas: readonly Span[]
  /** Whether brackets and braces are closed and nothing follows them. */
  readonly complete: boolean
  /** From the first brace to the end of the line, null without braces. */
  readonly braces: Span | null
}

const QUOTES: Readonly<Record<string, string>> = {
  '"': '"',
  '\u201c': '\u201d',
  '\u201d': '\u201d',
  '\u201e': '\u201c',
}
const KEY = /^[A-Za-z][A-Za-z0-9_-]*/
/** A name and its value with spaces around the sign between them, or with a colon for it. */
const SPACED = /^([A-Za-z][A-Za-z0-9_-]{0,63})(?:[ \t]+[=:][ \t]*|=[ \t]+|:[ \t]*)("[^"}]*"|[^\s}=#"]+)(?=[\s},;]|$)/

/**
 * Reads `[label]{#id key=value key="two words"}` as it follows a directive's name. Never fails: what is no attribute is
 * listed in `strays`.
 *
 * @param offset where `text` begins in the file
 */
export function readDirectiveText(text: string, offset: number): DirectiveText {
  const spanOf = (start: number, end: number): Span => ({ start: offset + start, end: offset + end })
  let at = 0
  let label: DirectiveText['label'] = null
  let complete = true
  if (text.startsWith('[')) {
    const end = text.indexOf(']')
    complete = end > 0
    const stop = complete ? end : text.length
    label = { text: foldSigns(text.slice(1, stop)), span: spanOf(1, stop) }
    at = complete ? end + 1 : text.length
  }
  const gap = /^[ \t]*/.exec(text.slice(at))?.[0].length ?? 0
  if (text[at + gap] !== '{') {
    const rest = text.slice(at).trim()
    const strays = rest === '' ? [] : [{ text: rest, span: spanOf(at + gap, at + gap + rest.length) }]
    return { label, attributes: [], strays, commas: [], complete: complete && rest === '', braces: null }
  }
  const open = at + gap
  const inside = readAttributes(text, open + 1, spanOf)
  const rest = text.slice(inside.end).trim()
  const restStart = text.length - text.slice(inside.end).trimStart().length
  const after = rest === '' ? [] : [{ text: rest, span: spanOf(restStart, restStart + rest.length) }]
  return {
    label,
    attributes: inside.attributes,
    strays: [...inside.strays, ...after],
    commas: inside.commas,
    complete: complete && inside.closed && rest === '',
    braces: spanOf(open, text.trimEnd().length),
  }
}

interface InsideBraces {
  readonly attributes: readonly WrittenAttribute[]
  readonly strays: readonly StrayText[]
  readonly commas: readonly Span[]
  readonly closed: boolean
  readonly end: number
}

function readAttributes(text: string, from: number, spanOf: (start: number, end: number) => Span): InsideBraces {
  const attributes: WrittenAttribute[] = []
  const strays: StrayText[] = []
  const commas: Span[] = []
  /** Where a stray piece ends that the next one may belong to. */
  let strayEnd = -1
  let at = from
  while (at < text.length && text[at] !== '}') {
    const start = at
    if (/\s/.test(text[at] ?? '')) {
      at++
    } else if (/[,;]/.test(text[at] ?? '')) {
      at++
      commas.push(spanOf(start, at))
    } else if (text[at] === '#') {
      at = skipBare(text, at + 1)
      const value = foldSigns(text.slice(start + 1, at))
      const valueSpan = spanOf(start + 1, at)
      attributes.push({ key: 'id', value, keySpan: spanOf(start, at), valueSpan, quoted: false, strayed: false })
    } else {
      const read = readNamed(text, at, spanOf)
      at = read.end
      if (read.attribute !== null) attributes.push(read.attribute)
      if (read.stray === null) continue
      const last = strays.at(-1)
      const joins = read.attribute === null && last !== undefined && text.slice(strayEnd, start).trim() === ''
      if (joins && strayEnd > from) {
        strays[strays.length - 1] = {
          text: `${last.text} ${read.stray.text}`,
          span: { ...last.span, end: read.stray.span.end },
        }
      } else strays.push(read.stray)
      strayEnd = read.attribute === null ? at : -1
    }
  }
  const end = Math.min(at + 1, text.length)
  const strayAt = new Map(strays.map((stray) => [stray.span.start, stray]))
  return { attributes: attributes.map((one) => withStray(one, strayAt)), strays, commas, closed: text[at] === '}', end }
}

/** One `key=value`, or what stands in its place. */
function readNamed(
  text: string,
  at: number,
  spanOf: (start: number, end: number) => Span,
): { readonly attribute: WrittenAttribute | null; readonly stray: StrayText | null; readonly end: number } {
  const spaced = SPACED.exec(text.slice(at, at + 256))
  if (spaced !== null) {
    const [whole, key = '', written = ''] = spaced
    const end = at + whole.length
    const quoted = written.startsWith('"')
    const value = quoted ? written.slice(1, -1) : foldSigns(written)
    const valueSpan = spanOf(end - written.length, end)
    const attribute = { key, value, keySpan: spanOf(at, at + key.length), valueSpan, quoted, strayed: true }
    return { attribute, stray: { text: whole, span: spanOf(at, end) }, end }
  }
  const key = KEY.exec(text.slice(at, at + 64))?.[0] ?? ''
  if (key === '' || text[at + key.length] !== '=') {
    const end = Math.max(skipBare(text, at), at + 1)
    return { attribute: null, stray: { text: text.slice(at, end), span: spanOf(at, end) }, end }
  }
  const value = readValue(text, at + key.length + 1)
  const valueSpan = spanOf(value.start, value.end)
  if (value.open)
    return { attribute: null, stray: { text: text.slice(value.start, value.end), span: valueSpan }, end: value.next }
  const attribute: WrittenAttribute = {
    key,
    value: value.text,
    keySpan: spanOf(at, at + key.length),
    valueSpan,
    quoted: value.next > value.end,
    strayed: false,
  }
  return { attribute, stray: null, end: value.next }
}

/** An attribute with the words that were meant to belong to its value: the rest of a title without quotes. */
function withStray(attribute: WrittenAttribute, strayAt: ReadonlyMap<number, StrayText>): WrittenAttribute {
  if (attribute.quoted || attribute.key === 'id' || attribute.strayed) return attribute
  const rest = strayAt.get(attribute.valueSpan.end + 1)
  return rest === undefined ? attribute : { ...attribute, value: `${attribute.value} ${rest.text}`, strayed: true }
}

interface ReadValue {
  /** Whether a quote begins it and none ends it: it then goes on to the next `key=` or the brace, its quote included. */
  readonly open: boolean
  readonly text: string
  readonly start: number
  readonly end: number
  readonly next: number
}

function readValue(text: string, start: number): ReadValue {
  const close = QUOTES[text[start] ?? '']
  if (close === undefined) {
    const end = skipBare(text, start)
    return { open: false, text: foldSigns(text.slice(start, end)), start, end, next: end }
  }
  const plainEnd = text.indexOf(close, start + 1)
  const end = plainEnd < 0 ? text.indexOf('"', start + 1) : plainEnd
  if (end < 0) {
    const stop = start + text.slice(start).search(/\s+[A-Za-z][A-Za-z0-9_-]*=|\s*\}|\s*$/)
    return { open: true, text: '', start, end: stop, next: stop }
  }
  return { open: false, text: text.slice(start + 1, end), start: start + 1, end, next: end + 1 }
}

/** The end of a word; a comma or semicolon behind it is none of it. */
function skipBare(text: string, from: number): number {
  let at = from
  while (at < text.length && text[at] !== '}' && !/\s/.test(text[at] ?? '')) at++
  let end = at
  while (end > from && /[,;]/.test(text[end - 1] ?? '')) end--
  return end > from ? end : at
}
