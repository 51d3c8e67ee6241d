import type { Block } from '@barwise/parser'
import type { DocumentBlock } from './document-block.ts'
import type { PageWords } from './page-words.ts'
import { plainText, setWords } from './typography.ts'

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
    case 'paragraph': {
      const empty =
        plainText(block.children, words).trim() === '' && !block.children.some((inline) => inline.kind === 'image')
      return empty ? [] : [{ kind: 'paragraph', children: setWords(block.children, words) }]
    }
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

type DocumentCells = Extract<DocumentBlock, { kind: 'table' }>['header']
