import type { Part } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { withInner } from '../../page/document/inner-blocks.ts'
import type { FlowContext } from './flow.ts'
import { el } from './nodes.ts'
import { cardsAnchor, notedAnchor, planAnchor, shapesAnchor } from './section-anchors.ts'

/** The rail beside a lesson: where it stands in the book, its sections, and a map of its bars, each a link to its card. */
export function lessonRail(context: FlowContext, lessonNumber: number | null, bookTitle: string | null): Element {
  const { document, web } = context
  const book =
    bookTitle === null
      ? []
      : [el('p', 'book', [h('a', { href: 'index.html' }, bookTitle), ` · ${web.lesson(lessonNumber ?? 1)}`])]
  return h(
    'nav',
    { className: ['rail'], ariaLabel: web.lessonNav },
    ...book,
    el('p', 'title', [h('a', { href: '#top' }, document.head.title)]),
    ...sectionLinks(context),
    ...barMaps(context),
  )
}

function sectionLinks(context: FlowContext): readonly Element[] {
  const { web } = context
  const links = context.document.flow.flatMap((block) => {
    if (block.kind === 'shapes') return [{ text: web.shapes, to: shapesAnchor(context.document.id) }]
    if (block.kind === 'part-head') return [{ text: block.title, to: block.anchor }]
    if (block.kind === 'cards') return [{ text: block.title, to: cardsAnchor(context.document.id, block.part) }]
    if (block.kind === 'plan') return [{ text: block.title, to: planAnchor(context.document.id, block.part) }]
    if (block.kind === 'check-notes') return [{ text: block.title, to: notedAnchor(context.document.id) }]
    return []
  })
  const once = links.filter((link, index) => links.findIndex((other) => other.to === link.to) === index)
  if (once.length === 0) return []
  return [
    el(
      'ul',
      'sections',
      once.map(({ text, to }) => h('li', h('a', { href: `#${encodeURIComponent(to)}` }, text))),
    ),
  ]
}

function barMaps(context: FlowContext): readonly Element[] {
  const parts = new Set(
    context.document.flow.flatMap(withInner).flatMap((block) => (block.kind === 'cards' ? [block.part] : [])),
  )
  return [...parts].flatMap((part) => barMap(part, context, parts.size > 1))
}

function barMap(part: Part, context: FlowContext, named: boolean): readonly Element[] {
  const { web, words, places, page } = context
  const label = web.barMap(named ? part.title : null)
  const bars = part.bars.filter((bar) => bar.number > 0)
  const items = bars.map((bar) => {
    const href = places.bar(page, { lesson: null, part: part.id, bar: bar.number }) ?? '#top'
    return h(
      'li',
      bar.sameAs === null ? {} : { className: ['again'] },
      h('a', { href, ariaLabel: words.barList([bar.number]), dataMap: bar.number }, String(bar.number)),
    )
  })
  return [el('p', 'map-of', [label]), h('ol', { className: ['map'], dataPart: part.id }, ...items)]
}
