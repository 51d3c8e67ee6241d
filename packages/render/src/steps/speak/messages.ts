import { IntlMessageFormat } from 'intl-messageformat'
import { plain, type RichText, type TextPiece, type WordCase } from './rich-text.ts'

/** A value of a message: words already spoken, a number for plurals and ordinals, or plain text. */
export type MessageValue = string | number | RichText

/** Speaks a message of a language by its key. */
export type Speak = (key: string, values?: Readonly<Record<string, MessageValue>>) => RichText

/**
 * The door to the message-format library: ICU messages (plural, selectordinal, select, tags) spoken as rich text. Its quirks,
 * all kept here: `format` returns a string or a list depending on the values, so only `formatToParts` is used; values that are
 * objects come back as object parts, which is how words already spoken pass through; tags are functions of their chunks; an
 * apostrophe quotes what follows it, so catalogues write ’; numbers are grouped unless said otherwise, so plain numbers go in as text.
 * Throws on a key the catalogue does not have: that is our mistake.
 */
export function openMessages(language: string, catalogue: Readonly<Record<string, string>>): Speak {
  const compiled = compiledOf(catalogue)
  return (key, values = {}) => {
    let message = compiled.get(key)
    if (message === undefined) {
      const source = catalogue[key]
      if (source === undefined) throw new Error(`no message ${key} in ${language}`)
      message = new IntlMessageFormat(source, language)
      compiled.set(key, message)
    }
    const handed = Object.fromEntries(
      Object.entries(values).map(([name, value]) => [name, typeof value === 'object' ? { pieces: value } : value]),
    )
    return message.formatToParts<unknown>({ ...handed, ...TAGS }).flatMap(piecesOf)
  }
}

const TAGS = { c: styled('count'), i: styled('italic'), dative: inCase('dative'), toward: inCase('toward') }

/** Messages are compiled once for a catalogue: compiling costs far more than speaking. */
const COMPILED: WeakMap<object, Map<string, IntlMessageFormat>> = new WeakMap()

function compiledOf(catalogue: object): Map<string, IntlMessageFormat> {
  const known = COMPILED.get(catalogue) ?? new Map<string, IntlMessageFormat>()
  COMPILED.set(catalogue, known)
  return known
}

function styled(style: TextPiece['style']): (chunks: readonly unknown[]) => unknown {
  return (chunks) => ({ pieces: chunks.flatMap(piecesOf).map((piece) => ({ ...piece, style })) })
}

function inCase(name: WordCase): (chunks: readonly unknown[]) => unknown {
  return (chunks) => ({
    pieces: chunks.flatMap(piecesOf).map(({ text, style, cases }) => ({ text: cases?.[name] ?? text, style })),
  })
}

function piecesOf(part: unknown): RichText {
  if (typeof part === 'string') return [plain(part)]
  if (typeof part === 'number') return [plain(String(part))]
  if (isSpoken(part)) return part.pieces
  if (typeof part === 'object' && part !== null && 'value' in part) return piecesOf(part.value)
  return []
}

function isSpoken(part: unknown): part is { readonly pieces: RichText } {
  return typeof part === 'object' && part !== null && 'pieces' in part && Array.isArray(part.pieces)
}
