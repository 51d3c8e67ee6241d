import type { Element } from 'hast'
import { h } from 'hastscript'
import type { Fact, LessonHead } from '../../page/document/document-block.ts'
import { answersOf, type FlowContext, flowOf } from './flow.ts'
import { framed } from './frame.ts'
import { el, glyphStore } from './nodes.ts'
import { playerScripts } from './player/player-scripts.ts'
import { lessonRail } from './rail.ts'
import { tempoWords } from './tempo.ts'

/** Where a lesson stands in its book; null for a lesson alone. */
export interface LessonPlace {
  readonly bookTitle: string
  readonly number: number
  readonly previous: { readonly title: string; readonly fileName: string } | null
  readonly next: { readonly title: string; readonly fileName: string } | null
}

/** The page of a lesson, as HTML text: the same content in the same order as on paper. */
export function lessonPage(context: FlowContext, place: LessonPlace | null): string {
  const { document, web, fonts } = context
  const main = h(
    'main',
    { id: 'top' },
    headOf(document.head, context),
    el('div', 'flow', [...flowOf(document.flow, context), ...answersOf(context)]),
    ...(place === null ? [] : [pager(place, context)]),
  )
  const rail = lessonRail(context, place?.number ?? null, place?.bookTitle ?? null)
  return framed({
    language: document.language,
    title: [document.head.title, place?.bookTitle ?? null, document.head.edition]
      .filter((name) => name !== null)
      .join(' – '),
    description: document.head.subtitle,
    skip: web.skip,
    body: [glyphStore(context.drawings, fonts), rail, main, ...playerScripts(context)],
  })
}

function headOf(head: LessonHead, context: FlowContext): Element {
  return el('header', 'head', [
    ...(head.edition === null ? [] : [el('p', 'edition', [head.edition])]),
    el('h1', '', [head.title]),
    ...(head.subtitle === null ? [] : [el('p', 'sub', [head.subtitle])]),
    ...(head.author === null ? [] : [el('p', 'by', [head.author])]),
    ...(head.facts.length === 0
      ? []
      : [
          el(
            'ul',
            'facts',
            head.facts.map((fact) => factOf(fact, context)),
          ),
        ]),
  ])
}

function factOf(fact: Fact, context: FlowContext): Element {
  return el('li', '', [fact.kind === 'tempo' ? tempoWords(fact.tempo, context) : fact.text])
}

function pager(place: LessonPlace, { web, words }: FlowContext): Element {
  const link = (to: { title: string; fileName: string } | null, word: string, name: string): Element[] =>
    to === null ? [] : [h('a', { className: [name], href: to.fileName }, el('span', '', [word]), to.title)]
  return h(
    'nav',
    { className: ['pager'], ariaLabel: web.bookNav },
    ...link(place.previous, web.previous, 'back'),
    h('a', { className: ['up'], href: 'index.html' }, el('span', '', [words.contents]), place.bookTitle),
    ...link(place.next, web.next, 'onward'),
  )
}
