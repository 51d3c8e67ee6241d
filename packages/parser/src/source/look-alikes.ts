/** Letters of other alphabets that look like the plain ones a part is written in. */
const ALPHABETS: readonly (readonly [alphabet: string, letters: string, plain: string])[] = [
  ['Cyrillic', 'АВЕЅІЈКМНОРСТУХаеѕіјорсухԁһԛԝ', 'ABESIJKMHOPCTYXaesijopcyxdhqw'],
  ['Greek', 'ΑΒΕΖΗΙΚΜΝΟΡΤΥΧοιυχ', 'ABEZHIKMNOPTYXoiux'],
]

const LETTERS: ReadonlyMap<string, { readonly plain: string; readonly alphabet: string }> = new Map(
  ALPHABETS.flatMap(([alphabet, letters, plain]) =>
    [...letters].map((letter, at) => [letter, { plain: plain[at] ?? letter, alphabet }] as const),
  ),
)

/** Characters without any width: they come along when text is copied from a page. */
const INVISIBLE = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\ufeff]/

/** Plain signs for characters that only look like them, and the first of those characters. */
export interface PlainLetters {
  /** As long as what was written: an invisible character becomes a space. */
  readonly text: string
  /** The first character that is not what it looks like: where it stands, what it is, and how to mend it. */
  readonly stranger: {
    readonly at: number
    readonly message: string
    readonly help: string
  }
}

/**
 * The text with plain letters in place of look-alikes from other alphabets and of invisible characters; null when there are
 * none, or when other letters of those alphabets stand beside them, so that it is a text in another language.
 *
 * @example plainLetters('Аm7 x')?.text // 'Am7 x', the first letter was Cyrillic
 */
export function plainLetters(text: string): PlainLetters | null {
  // Most lines have nothing but plain signs.
  if (!/[^\t -~]/.test(text)) return null
  const letters = text.split('')
  const plain = letters.map((letter) => (INVISIBLE.test(letter) ? ' ' : (LETTERS.get(letter)?.plain ?? letter)))
  const at = plain.findIndex((letter, place) => letter !== letters[place])
  if (at < 0 || /[\p{Script=Cyrillic}\p{Script=Greek}]/u.test(plain.join('').replaceAll('Δ', ''))) return null
  const written = letters[at] ?? ''
  const known = LETTERS.get(written)
  if (known !== undefined) {
    const message = `this "${written}" is a ${known.alphabet} letter, not the plain "${known.plain}"`
    return { text: plain.join(''), stranger: { at, message, help: `type \`${known.plain}\` in its place` } }
  }
  const code = written.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')
  const message = `an invisible character stands here (U+${code})`
  return { text: plain.join(''), stranger: { at, message, help: 'delete it: go behind it and press backspace once' } }
}
