import { assertNever, type Inline } from '@barwise/parser'
import { followedAddress } from '../../page/document/followed-address.ts'
import { spokenShapeName } from '../../steps/speak/voice.ts'
import type { TextContext } from './text-context.ts'

/**
 * Words as plain text: bold, italics and code by their words alone, references by their names, a picture by what it shows, a
 * link to the web with its address. A line break of the writer stays one.
 */
export function inlineText(children: readonly Inline[], context: TextContext): string {
  const alone = children.length === 1
  return children.map((inline) => pieceText(inline, alone, context)).join('')
}

function pieceText(inline: Inline, alone: boolean, context: TextContext): string {
  switch (inline.kind) {
    case 'text':
    case 'code':
      return inline.text
    case 'strong':
    case 'emphasis':
      return inlineText(inline.children, context)
    case 'link':
      return linkText(inlineText(inline.children, context), inline.url)
    case 'image': {
      if (inline.alt === '') return ''
      const picture = context.text.picture(inline.alt)
      return alone ? picture : `(${picture})`
    }
    case 'break':
      return '\n'
    case 'shape-ref':
      return spokenShapeName(inline.shape)
    case 'chord':
      return spokenShapeName(inline.symbol)
    case 'bar-ref':
      return context.words.bar(inline.from, inline.to)
    default:
      return assertNever(inline)
  }
}

/** A link with its address behind it when that leads to the web or to a mailbox and is not said already. */
function linkText(words: string, url: string): string {
  if (followedAddress(url).kind !== 'web') return words
  const address = url.replace(/^mailto:/i, '')
  return words === url || words === address ? words : `${words} (${address})`
}
