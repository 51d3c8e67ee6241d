import type { Element, ElementContent, Root } from 'hast'
import { toHtml } from 'hast-util-to-html'
import { h } from 'hastscript'
import { el } from './nodes.ts'

/** The shell of a page. */
export interface Frame {
  readonly language: string
  readonly title: string
  readonly description: string | null
  readonly skip: string
  readonly body: readonly ElementContent[]
}

/** A whole HTML document, as text. Nothing in it leads to the network, and nothing that is to be read needs a script. */
export function framed(frame: Frame): string {
  const head = h(
    'head',
    h('meta', { charSet: 'utf-8' }),
    h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    h('meta', { name: 'color-scheme', content: 'light dark' }),
    h('title', frame.title),
    ...(frame.description === null ? [] : [h('meta', { name: 'description', content: frame.description })]),
    h('link', { rel: 'stylesheet', href: 'assets/style.css' }),
  )
  const skip = h('a', { className: ['skip'], href: '#top' }, frame.skip)
  const html: Element = h('html', { lang: frame.language }, head, el('body', '', [skip, ...frame.body]))
  const root: Root = { type: 'root', children: [{ type: 'doctype' }, html] }
  return `${toHtml(root, { allowDangerousHtml: true, upperDoctype: true })}\n`
}
