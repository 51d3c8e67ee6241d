import type { Block, Inline } from '@barwise/parser'
import type { DocumentBlock } from './document-block.ts'
import type { PageWords } from './page-words.ts'
import { setWords } from './typography.ts'

/**
 * A block of ordinary text as the page has it: a paragraph with something in it, a list, a quote, code, a rule or a table. Null for
 * everything that a lesson adds, and for headings, whose level depends on what is around them.
 *
 * @param inner composes the blocks inside a list or a quote.
 */
export function composeText(
  block: Block,
  words: PageWords,
  inner: (blocks: readonly Block[]) => readonly DocumentBlock[],
): readonly DocumentBlock[] | null {
  switch (block.kind) {
    case 'paragraph':
      return paragraphs(block.children).map((children) => ({ kind: 'paragraph', children: setWords(children, words) }))
    case 'list': {
      const { ordered, start, tight } = block
      return [
        { kind: 'list', ordered, start, tight, items: block.items.map((item) => ({ blocks: inner(item.children) })) },
      ]
    }
    case 'quote':
      return [{ kind: 'quote', blocks: inner(block.children) }]
    case 'code-block':
      return [{ kind: 'code-block', language: block.language, text: block.text }]
    case 'rule':
      return [{ kind: 'rule' }]
    case 'table': {
      const cells = (row: (typeof block.rows)[number]): DocumentCells => row.map((cell) => setWords(cell, words))
      return [{ kind: 'table', align: block.align, header: cells(block.header), rows: block.rows.map(cells) }]
    }
    default:
      return null
  }
}

/** A paragraph as it is set: its words, then each picture that stands among them by itself, so that no line is torn by one. None without anything in it. */
function paragraphs(children: readonly Inline[]): readonly (readonly Inline[])[] {
  const pictures = children.flatMap(picturesIn)
  if (pictures.length === 0) return isBlank(children) ? [] : [children]
  const words = children.flatMap(withoutPictures).map(oneSpace)
  return isBlank(words) ? [children] : [words, ...pictures.map((picture) => [picture])]
}

function isBlank(children: readonly Inline[]): boolean {
  return children.every((inline) => inline.kind === 'break' || (inline.kind === 'text' && inline.text.trim() === ''))
}

function picturesIn(inline: Inline): readonly Inline[] {
  if (inline.kind === 'image') return [inline]
  return 'children' in inline ? inline.children.flatMap(picturesIn) : []
}

function withoutPictures(inline: Inline): readonly Inline[] {
  if (inline.kind === 'image') return []
  if (!('children' in inline)) return [inline]
  const children = inline.children.flatMap(withoutPictures)
  return isBlank(children) ? [] : [{ ...inline, children }]
}

/** Where a picture stood between two words, one space is left. */
function oneSpace(inline: Inline, index: number, all: readonly Inline[]): Inline {
  const before = all[index - 1]
  const doubled = before?.kind === 'text' && before.text.endsWith(' ') && inline.kind === 'text'
  return doubled ? { ...inline, text: inline.text.trimStart() } : inline
}

type DocumentCells = Extract<DocumentBlock, { kind: 'table' }>['header']
