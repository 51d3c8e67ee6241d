import type { Inline } from '@barwise/parser'
import type { PageWords } from './page-words.ts'

/**
 * Words as a printer sets them: straight quotation marks made true ones, "bar 3" and its like held together by a no-break
 * space, three full stops made an ellipsis. What the writer already typed as a true mark stays. Code is left alone.
 */
export function setWords(children: readonly Inline[], words: PageWords): readonly Inline[] {
  return setRun(children, words, { last: ' ', quoting: false })
}

/**
 * The character before, carried over the bounds of bold and italic so that a mark knows on which side it stands, and whether a
 * single quotation mark is open: an apostrophe is none.
 */
interface Before {
  last: string
  quoting: boolean
}

function setRun(children: readonly Inline[], words: PageWords, before: Before): readonly Inline[] {
  return children.map((inline): Inline => {
    switch (inline.kind) {
      case 'text':
        return { ...inline, text: setText(inline.text, words, before) }
      case 'strong':
      case 'emphasis':
      case 'link':
        return { ...inline, children: setRun(inline.children, words, before) }
      case 'break':
        before.last = ' '
        return inline
      default:
        before.last = 'x'
        return inline
    }
  })
}

/** One run of words without emphasis, set as a printer does. */
export function setPlain(text: string, words: PageWords): string {
  return setText(text, words, { last: ' ', quoting: false })
}

/** The same for words that may not be there. */
export function setGiven(text: string | null, words: PageWords): string | null {
  return text === null ? null : setPlain(text, words)
}

const APOSTROPHE = '\u2019'

function setText(text: string, words: PageWords, before: Before): string {
  let out = ''
  for (let i = 0; i < text.length; i++) {
    const set = setMark(text.charAt(i), text.charAt(i + 1), words, before)
    out += set
    before.last = set
  }
  return holdNumbers(out.replace(/\.\.\./g, '…'), words)
}

/** A straight mark made a true one by what stands before and behind it; any other character as it is. */
function setMark(mark: string, next: string, words: PageWords, before: Before): string {
  if (mark !== '"' && mark !== "'") return mark
  const [open, close, singleOpen, singleClose] = words.quotes
  const opens = /[\s([{–—«]/u.test(before.last) || before.last === open || before.last === singleOpen
  if (mark === '"') return opens ? open : close
  if (opens) {
    before.quoting = true
    return singleOpen
  }
  if (!before.quoting || /\p{L}/u.test(next)) return APOSTROPHE
  before.quoting = false
  return singleClose
}

/** Words with "bar 3", "fret 7" and their like held together by a no-break space. */
export function holdNumbers(text: string, words: PageWords): string {
  const { source, flags } = words.keepsWithNumber
  return text.replace(new RegExp(source, flags), (pair) => `${pair.trimEnd()}\u00a0`)
}

/** A text with its first letter raised, as at the start of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** A count with the parts of each beat held together: a line may end before the next number only. */
export function holdCounts(text: string): string {
  return text.replace(/ (?=\D)/g, '\u00a0')
}

/** The plain text of some words, references and pictures by their names. */
export function plainText(children: readonly Inline[], words: PageWords): string {
  return children
    .map((inline) => {
      switch (inline.kind) {
        case 'text':
        case 'code':
          return inline.text
        case 'strong':
        case 'emphasis':
        case 'link':
          return plainText(inline.children, words)
        case 'image':
          return inline.alt
        case 'break':
          return ' '
        case 'shape-ref':
          return inline.shape
        case 'chord':
          return inline.symbol
        case 'bar-ref':
          return words.bar(inline.from, inline.to)
        default:
          return ''
      }
    })
    .join('')
}
