import { assertNever, type Inline, parseChordSymbol } from '@barwise/parser'
import type { Element, ElementContent } from 'hast'
import { h } from 'hastscript'
import { followedAddress } from '../../page/document/followed-address.ts'
import { el } from './nodes.ts'
import type { PageContext } from './page-context.ts'
import type { BookletPage } from './places.ts'

/** The words of a lesson as nodes. Everything the writer typed becomes a text node: markup in a lesson is shown, never passed on. */
export function wordsOf(
  children: readonly Inline[],
  context: PageContext & { readonly page: BookletPage },
): readonly ElementContent[] {
  return children.map((inline) => wordOf(inline, context))
}

function wordOf(inline: Inline, context: PageContext & { readonly page: BookletPage }): ElementContent {
  switch (inline.kind) {
    case 'text':
      return { type: 'text', value: inline.text }
    case 'code':
      return el('code', '', [inline.text])
    case 'strong':
      return el('strong', '', wordsOf(inline.children, context))
    case 'emphasis':
      return el('em', '', wordsOf(inline.children, context))
    case 'break':
      return h('br')
    case 'link': {
      const href = hrefOf(inline.url, context)
      const words = wordsOf(inline.children, context)
      return href === null ? el('span', '', words) : h('a', { href }, ...words)
    }
    case 'image': {
      const src = context.images.get(inline.source)
      return src === undefined ? el('span', 'missing', [inline.alt]) : h('img', { src, alt: inline.alt })
    }
    case 'shape-ref':
      return linked(context.places.shape(context.page, inline.shape), chordName(inline.shape))
    case 'chord':
      return chordName(inline.symbol)
    case 'bar-ref': {
      const text = context.words.bar(inline.from, inline.to).replaceAll(' ', '\u00a0')
      const to = context.places.bar(context.page, { lesson: inline.lesson, part: inline.part, bar: inline.from })
      return linked(to, el('span', 'bar-ref', [text]))
    }
    default:
      return assertNever(inline)
  }
}

function linked(href: string | null, words: ElementContent): ElementContent {
  return href === null ? words : h('a', { href }, words)
}

/** An address that may be followed, as the page has it; null for any other. */
function hrefOf(url: string, { places, page }: PageContext & { readonly page: BookletPage }): string | null {
  const address = followedAddress(url)
  if (address.kind === 'lesson') return places.lessonPage(page, address.file)
  return address.kind === 'web' ? address.url : null
}

/** A shape's name or a chord symbol as the trade prints it: extensions raised, true flats and sharps. A name that is no symbol stays plain. */
export function chordName(symbol: string): ElementContent {
  const [base = symbol, ...variant] = symbol.split('.')
  const own = variant.length === 0 ? [] : [el('span', 'variant', [` ${variant.join(' ')}`])]
  const display = parseChordSymbol(base)?.display
  if (display === undefined) return el('span', 'chord', [base, ...own])
  const { root, accidental, onLine, raised, bass } = display
  return el('span', 'chord', [
    root + accidental + onLine.replace('-', '−'),
    ...(raised === '' ? [] : [el('sup', '', [raised])]),
    ...(bass === null ? [] : [`/${bass.root}${bass.accidental}`]),
    ...own,
  ])
}

/** Words in italics, with each accidental upright and a little apart: its face has no italic, and an italic letter before it leans into it. */
export function signsApart(text: string): readonly (Element | string)[] {
  return text
    .split(/([♯♭♮]+)/)
    .filter((piece) => piece !== '')
    .map((piece) => (/^[♯♭♮]/.test(piece) ? el('span', 'sign', [piece]) : piece))
}
