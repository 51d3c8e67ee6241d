/** A piece of a sentence and how it is set: `count` is a count of the beat (`1`, `e`, `&`, `a`), `italic` a remark or an aside. */
export interface TextPiece {
  readonly text: string
  readonly style: 'plain' | 'count' | 'italic'
  /** The same words in the grammatical cases of a language that has them; a message asks for one by a tag of its name. */
  readonly cases?: Readonly<Record<WordCase, string>>
}

/** A case that words can be put into: where something is, and where it goes to. */
export type WordCase = 'dative' | 'toward'

/** Words in pieces, in order. */
export type RichText = readonly TextPiece[]

/** A plain piece. */
export function plain(text: string): TextPiece {
  return { text, style: 'plain' }
}

/** Pieces as they are set: neighbours of one style merged, spaces never doubled and never before a mark that ends something. */
export function tidy(pieces: RichText): RichText {
  const merged: TextPiece[] = []
  for (const piece of pieces) {
    if (piece.text === '') continue
    const last = merged.at(-1)
    const text = last === undefined || last.text.endsWith(' ') ? piece.text.replace(/^ +/, '') : piece.text
    if (text === '') continue
    if (last !== undefined && /^[,;:.]/.test(text) && last.text.endsWith(' ')) {
      merged[merged.length - 1] = { text: last.text.trimEnd(), style: last.style }
    }
    const open = merged.at(-1)
    if (open !== undefined && open.style === piece.style)
      merged[merged.length - 1] = { text: open.text + text, style: open.style }
    else merged.push({ text, style: piece.style })
  }
  return merged.map(({ text, style }) => ({ style, text: text.replace(/ {2,}/g, ' ').replace(/ ([,;:.])/g, '$1') }))
}

/** The marks that a count by letter stands between in plain text. */
export type CountMarks = readonly [open: string, close: string]

/** How counts are written in plain text: the word for `&`, and the marks around a letter (English ones when left out). */
export interface CountWords {
  readonly andWord: string
  readonly countMarks?: CountMarks
}

/** The same words without styles: counts by letter in quotation marks, `&` as the word the language says for it. */
export function plainText(pieces: RichText, and: string, [open, close]: CountMarks = ['‘', '’']): string {
  return pieces
    .map(({ text, style }) => {
      if (style !== 'count' || /^\d/.test(text)) return text
      return `${open}${text === '&' ? and : text}${close}`
    })
    .join('')
    .replaceAll('\u00a0', ' ')
}

/** The words of a text without styles. */
export function textOf(text: RichText): string {
  return text.map((piece) => piece.text).join('')
}
