import { assertNever } from '@barwise/parser'
import type { Element, ElementContent } from 'hast'
import { h } from 'hastscript'
import { answerAnchor } from '../../page/document/anchors.ts'
import type { DocumentBlock } from '../../page/document/document-block.ts'
import { blankStaff } from './blank-staff.ts'
import { cardsSection } from './cards.ts'
import { checkSection, marginNotes } from './margin-notes.ts'
import { el, spoken } from './nodes.ts'
import { claimId, type PageContext } from './page-context.ts'
import type { BookletPage } from './places.ts'
import { planSection } from './plan.ts'
import { shapesRow } from './shapes.ts'
import { stripFigure } from './strip.ts'
import { systemsFigure } from './systems.ts'
import { tempoWords } from './tempo.ts'
import { wordsOf } from './words.ts'

/** What blocks are written with: the page's shared things, and the page itself. */
export type FlowContext = PageContext & { readonly page: BookletPage }

/** The blocks of a document in order. A part's systems stand in one section with its head. */
export function flowOf(blocks: readonly DocumentBlock[], context: FlowContext): readonly ElementContent[] {
  const nodes: ElementContent[] = []
  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i] as DocumentBlock
    if (block.kind !== 'part-head') {
      nodes.push(blockOf(block, context))
      continue
    }
    const next = blocks[i + 1]
    const systems = next?.kind === 'systems' && next.part === block.part ? next : null
    if (systems !== null) i++
    nodes.push(partSection(block, systems, context))
  }
  return nodes
}

function blockOf(block: DocumentBlock, context: FlowContext): ElementContent {
  switch (block.kind) {
    case 'heading':
      return el(`h${block.level}`, '', wordsOf(block.children, context))
    case 'paragraph':
      return el('p', '', wordsOf(block.children, context))
    case 'list':
      return listOf(block, context)
    case 'quote':
      return el('blockquote', '', flowOf(block.blocks, context))
    case 'code-block':
      return h('pre', { tabIndex: 0 }, h('code', block.text))
    case 'rule':
      return h('hr')
    case 'table':
      return tableOf(block, context)
    case 'shapes':
      return shapesRow(block.shapes, marginNotes(block.notes, context), context)
    case 'part-head':
      return partSection(block, null, context)
    case 'systems':
      return systemsFigure(block.part, block.bars, context)
    case 'cards':
      return cardsSection(block, context)
    case 'strip':
      return stripFigure(block.part, block.bars, context)
    case 'plan':
      return planSection(block, context)
    case 'form':
      return formOf(block, context)
    case 'blank':
      return blankStaff(block.bars, context)
    case 'container':
      return h(
        'aside',
        { className: [block.role] },
        el('p', 'heading', [el('strong', '', [block.title])]),
        ...flowOf(block.blocks, context),
      )
    case 'answer-note':
      return answerNote(block, context)
    case 'check-notes':
      return checkSection(block, context)
    case 'page-break':
      return el('div', 'page-break', [])
    default:
      return assertNever(block)
  }
}

function partSection(
  head: Extract<DocumentBlock, { kind: 'part-head' }>,
  systems: Extract<DocumentBlock, { kind: 'systems' }> | null,
  context: FlowContext,
): Element {
  const id = claimId(head.anchor, context)
  const about = head.about === '' ? [] : [el('p', '', [head.about])]
  return h(
    'section',
    { className: ['section'], ...(id === undefined ? {} : { id }) },
    el('div', 'heading', [el('h2', '', [head.title]), tempoWords(head.tempo, context), ...about]),
    ...(systems === null ? [] : [systemsFigure(systems.part, systems.bars, context)]),
  )
}

function listOf(block: Extract<DocumentBlock, { kind: 'list' }>, context: FlowContext): Element {
  const items = block.items.map((item) => {
    const only = item.blocks.length === 1 ? item.blocks[0] : undefined
    const words =
      block.tight && only?.kind === 'paragraph' ? wordsOf(only.children, context) : flowOf(item.blocks, context)
    return el('li', '', words)
  })
  return block.ordered ? h('ol', block.start === 1 ? {} : { start: block.start }, ...items) : h('ul', ...items)
}

function tableOf(block: Extract<DocumentBlock, { kind: 'table' }>, context: FlowContext): Element {
  const align = (column: number): { className?: string[] } => {
    const side = block.align[column] ?? null
    return side === null || side === 'left' ? {} : { className: [side] }
  }
  const head = block.header.map((cell, column) =>
    h('th', { scope: 'col', ...align(column) }, ...wordsOf(cell, context)),
  )
  const rows = block.rows.map((row) =>
    h('tr', ...row.map((cell, column) => h('td', align(column), ...wordsOf(cell, context)))),
  )
  const table = h('table', h('thead', h('tr', ...head)), h('tbody', ...rows))
  // A table that may be wider than a phone can be scrolled from the keyboard.
  return h('div', { className: ['table'], ...(head.length > 3 ? { tabIndex: 0 } : {}) }, table)
}

function formOf(block: Extract<DocumentBlock, { kind: 'form' }>, context: FlowContext): Element {
  const entries = block.entries.map(({ name, bars, times }) => {
    const range = bars === null ? [] : [`, ${context.words.bar(bars.from, bars.to)}`]
    const often = times === 1 ? [] : [el('span', 'times', [` ${context.words.times(times)}`])]
    return el('li', '', [name, ...range, ...often])
  })
  return el('section', '', [el('h2', '', [context.words.form]), el('ol', 'form', entries)])
}

function answerNote(block: Extract<DocumentBlock, { kind: 'answer-note' }>, context: FlowContext): Element {
  const id = claimId(block.anchor, context)
  const answer = answerAnchor(context.document.id, block.number, 'answer')
  const words = h('a', { href: `#${encodeURIComponent(answer)}` }, block.text)
  return h('p', { className: ['answer-note'], ...(id === undefined ? {} : { id }) }, words)
}

/** The answers held back for the end of the lesson; empty when there are none. */
export function answersOf(context: FlowContext): readonly ElementContent[] {
  const { answers } = context.document
  if (answers.length === 0) return []
  const sections = answers.map((answer) => {
    const id = claimId(answer.anchor, context)
    const back = answerAnchor(context.document.id, answer.number, 'note')
    const note = h('a', { href: `#${encodeURIComponent(back)}` }, context.web.backToNote, spoken(`: ${answer.title}`))
    return h(
      'section',
      id === undefined ? {} : { id },
      el('h3', '', [answer.title]),
      ...flowOf(answer.blocks, context),
      el('p', '', [note]),
    )
  })
  return [
    el('section', 'section answers', [el('div', 'heading', [el('h2', '', [context.words.answers])]), ...sections]),
  ]
}
