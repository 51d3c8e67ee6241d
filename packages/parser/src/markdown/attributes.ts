import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames } from '../finding/nearest-names.ts'
import type { Span } from '../source/span.ts'
import type { DirectiveText, StrayText, WrittenAttribute } from './directive-text.ts'
import { meantValue } from './meant-values.ts'

/** The attributes of a directive by name, those that are wrong reported and left out. */
export type Attributes = ReadonlyMap<string, WrittenAttribute>

/** The most attributes, and the most pieces that are none, that are looked at in one pair of braces. */
const MOST_ENTRIES = 50

/** Reports unknown and repeated attributes and pieces that are none; returns the others by name. */
export function checkAttributes(
  written: DirectiveText,
  options: { readonly what: string; readonly allowed: readonly string[]; readonly report: Report },
): Attributes {
  const { what, allowed, report } = options
  const found = new Map<string, WrittenAttribute>()
  const [comma] = written.commas
  if (comma !== undefined) {
    const message = 'no comma stands between these'
    report({ code: 'bad-attribute', span: comma, message, help: 'put only spaces between them' })
  }
  for (const stray of written.strays.slice(0, MOST_ENTRIES)) {
    const help = helpForStray(stray, written, allowed)
    report({ code: 'bad-attribute', span: stray.span, message: `\`${shown(stray.text)}\` cannot be read`, help })
  }
  for (const attribute of written.attributes.slice(0, MOST_ENTRIES)) {
    const { key, keySpan } = attribute
    if (!allowed.includes(key)) {
      if (attribute.strayed) continue
      const help =
        allowed.length === 0
          ? `delete it; \`${what}\` takes none`
          : key === 'id' && allowed.includes('part')
            ? `write \`part=${attribute.value}\``
            : helpWithNames(key, allowed.filter(isKey), 'delete it')
      report({ code: 'unknown-attribute', span: keySpan, message: `\`${what}\` does not know \`${key}\``, help })
    } else if (found.has(key)) {
      const message = `\`${key}\` stands twice`
      report({ code: 'repeated-attribute', span: keySpan, message, help: 'delete one of the two' })
    } else {
      found.set(key, attribute)
    }
  }
  return found
}

/** The mend for a piece that is no attribute: an id without its `#`, the second of two words without quotes, or anything. */
function helpForStray(stray: StrayText, written: DirectiveText, allowed: readonly string[]): string {
  if (/^["\u201c\u201d\u201e]/.test(stray.text)) return `close the quotes: \`"${shown(stray.text.slice(1))}"\``
  const spaced = /^([\w-]+)\s*([=:])\s*(.+)$/.exec(stray.text)
  if (spaced !== null) {
    const right = `\`${shown(`${spaced[1]}=${spaced[3]}`)}\``
    return spaced[2] === ':' ? `write ${right}` : `write it without spaces: ${right}`
  }
  const before = written.attributes.find(({ valueSpan }) => valueSpan.end + 1 === stray.span.start)
  if (before !== undefined && before.key !== 'id' && !before.quoted) {
    const meant = meantValue(before.key, before.value, (one) => /^\d+-\d+$/.test(one))
    if (meant !== null) return `write \`${before.key}=${meant}\``
    return `put the words in quotes: \`${before.key}="${shown(before.value)}"\``
  }
  if (!allowed.includes('id')) {
    if (allowed.includes('bars') && /^\d+(?:-\d+)?$/.test(stray.text)) return `write \`bars=${stray.text}\``
    if (allowed.includes('part') && /^[A-Za-z][\w-]*$/.test(stray.text)) return `write \`part=${stray.text}\``
  }
  if (allowed.includes('id') && isBareId(stray, written)) return `write \`#${stray.text}\``
  return `write ${allowed.includes('id') ? '`#name`, ' : ''}\`name=value\` or \`name="two words"\` with spaces between`
}

/** Whether a stray piece is an id that lacks its `#`: one word in front of everything else, where there is no id. */
export function isBareId({ text, span }: StrayText, { attributes, strays }: DirectiveText): boolean {
  const isFirst = [...attributes.map(({ keySpan }) => keySpan), ...strays.map((other) => other.span)].every(
    ({ start }) => start >= span.start,
  )
  return isFirst && /^[A-Za-z][\w-]*$/.test(text) && attributes.every(({ key }) => key !== 'id')
}

/** Parses one attribute; null when it is not there, or wrong, which is reported. */
export function parsedAttribute<Value>(
  attribute: WrittenAttribute | undefined,
  options: { readonly parse: (text: string) => Value | null; readonly allowed: string; readonly report: Report },
): Value | null {
  if (attribute === undefined) return null
  const value = options.parse(attribute.value)
  if (value !== null || attribute.strayed) return value
  const { key, value: text } = attribute
  const guess = meantValue(key, text, (one) => options.parse(one) !== null)
  const quoted = guess !== null && /\s/.test(guess) ? `"${guess}"` : guess
  options.report({
    code: 'bad-attribute',
    span: spanOrKey(attribute),
    message: text === '' ? `\`${key}\` has no value` : `\`${key}\` cannot be \`${shown(text)}\``,
    help: guess === null ? `write ${options.allowed}` : `write \`${key}=${quoted}\``,
  })
  return null
}

/** Where the value stands; its key when the value is empty. */
export function spanOrKey({ keySpan, valueSpan }: WrittenAttribute): Span {
  return valueSpan.end > valueSpan.start ? valueSpan : keySpan
}

function isKey(name: string): boolean {
  return name !== 'id'
}

function shown(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}
