import type { Book } from '@barwise/parser'
import type { Element, ElementContent } from 'hast'
import { h } from 'hastscript'
import { setPlain } from '../../page/document/typography.ts'
import type { FlowContext } from './flow.ts'
import { framed } from './frame.ts'
import { el } from './nodes.ts'
import type { BookletPage } from './places.ts'

/** What the first page of a book's booklet shows beside the list of lessons. */
export interface ContentsInput {
  readonly book: Book
  /** The page of each lesson, in the book's order. */
  readonly pages: readonly BookletPage[]
  /** The name of the edition; null for the pupil's. */
  readonly edition: string | null
  readonly words: FlowContext['words']
  readonly web: FlowContext['web']
  /** The words under each heading of the book, already written. */
  readonly intro: (part: number) => readonly ElementContent[]
}

/** The first page of a book: title, contents with each lesson's line, imprint. */
export function contentsPage(input: ContentsInput): string {
  const { book, words, web } = input
  const { settings } = book
  const title = setPlain(settings.title, words)
  let next = 0
  const parts = book.parts.map((part, index) => {
    const pages = input.pages.slice(next, next + part.lessons.length)
    next += part.lessons.length
    const node = el('section', 'flow', [
      ...(part.heading === null ? [] : [el('h2', '', [setPlain(part.heading, words)])]),
      ...input.intro(index),
      ...(pages.length === 0
        ? []
        : [
            el(
              'ol',
              '',
              pages.map((page) => lessonItem(page, settings.language)),
            ),
          ]),
    ])
    return { node, leads: pages.length > 0 }
  })
  // What comes before the first list of lessons is read, not a way to go.
  const first = Math.max(
    0,
    parts.findIndex(({ leads }) => leads),
  )
  const nodes = parts.map(({ node }) => node)
  const head = el('header', 'head', [
    ...(input.edition === null ? [] : [el('p', 'edition', [input.edition])]),
    el('h1', '', [title]),
    ...(settings.subtitle === null ? [] : [el('p', 'sub', [setPlain(settings.subtitle, words)])]),
    ...(settings.author === null ? [] : [el('p', 'by', [words.author(setPlain(settings.author, words))])]),
  ])
  const main = h(
    'main',
    { id: 'top', className: ['alone'] },
    head,
    ...(first === 0 ? [] : [el('div', 'contents', nodes.slice(0, first))]),
    h('nav', { className: ['contents'], ariaLabel: words.contents }, ...nodes.slice(first)),
    ...imprint(input),
  )
  return framed({
    language: settings.language,
    title: input.edition === null ? title : `${title} – ${input.edition}`,
    description: settings.subtitle,
    skip: web.skip,
    body: [main],
  })
}

function lessonItem({ document, fileName }: BookletPage, language: string): Element {
  const line = document.head.subtitle === null ? [] : [el('span', 'line', [document.head.subtitle])]
  const foreign = document.language === language ? {} : { lang: document.language }
  return el('li', '', [h('a', { href: fileName, ...foreign }, el('span', 'name', [document.head.title]), ...line)])
}

/** Edition, licence, whose leave the music is printed by, and the care note. */
function imprint({ book, words, edition: name }: ContentsInput): readonly Element[] {
  const { edition, licence, permissions } = book.settings
  const lines = [
    ...(name === null ? [] : [name]),
    ...(edition === null ? [] : [words.edition(edition)]),
    ...(licence === null ? [] : [words.licence(licence)]),
    ...(permissions === null ? [] : [permissions]),
    words.careNote,
  ]
  return [
    el(
      'footer',
      'imprint',
      lines.map((text) => el('p', '', [setPlain(text, words)])),
    ),
  ]
}
