import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames } from '../finding/nearest-names.ts'
import type { Span } from '../source/span.ts'
import type { DirectiveText, WrittenAttribute } from './directive-text.ts'

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
  for (const stray of written.strays.slice(0, MOST_ENTRIES)) {
    const help = allowed.includes('id')
      ? 'write `#name`, `name=value` or `name="two words"` with spaces between'
      : 'write `name=value` or `name="two words"` with spaces between'
    report({ code: 'bad-attribute', span: stray.span, message: `\`${shown(stray.text)}\` cannot be read`, help })
  }
  for (const attribute of written.attributes.slice(0, MOST_ENTRIES)) {
    const { key, keySpan } = attribute
    if (!allowed.includes(key)) {
      const help =
        allowed.length === 0
          ? `delete it; \`${what}\` takes none`
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

/** Parses one attribute; null when it is not there, or wrong, which is reported. */
export function parsedAttribute<Value>(
  attribute: WrittenAttribute | undefined,
  options: { readonly parse: (text: string) => Value | null; readonly allowed: string; readonly report: Report },
): Value | null {
  if (attribute === undefined) return null
  const value = options.parse(attribute.value)
  if (value !== null) return value
  const { key, value: text } = attribute
  options.report({
    code: 'bad-attribute',
    span: spanOrKey(attribute),
    message: text === '' ? `\`${key}\` has no value` : `\`${shown(text)}\` is not ${options.allowed}`,
    help: `write ${options.allowed} after \`${key}=\`, in quotes where it has spaces`,
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
