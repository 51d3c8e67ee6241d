import type { Block } from '@barwise/parser'
import type { DocumentBlock } from './document-block.ts'
import type { PageWords } from './page-words.ts'
import { setWords } from './typography.ts'
import { pageWords } from './words-of-language.ts'

/** Plain prose of a book as document blocks: paragraphs, lists, quotes and headings; what belongs to a lesson is left out. */
export function composeProse(blocks: readonly Block[], language: string): readonly DocumentBlock[] {
  return proseBlocks(blocks, pageWords(language))
}

function proseBlocks(blocks: readonly Block[], words: PageWords): readonly DocumentBlock[] {
  return blocks.flatMap((block): readonly DocumentBlock[] => {
    switch (block.kind) {
      case 'paragraph':
        return [{ kind: 'paragraph', children: setWords(block.children, words) }]
      case 'heading':
        return [{ kind: 'heading', level: 2, children: setWords(block.children, words) }]
      case 'list':
        return [
          {
            kind: 'list',
            ordered: block.ordered,
            start: block.start,
            tight: block.tight,
            items: block.items.map((item) => ({ blocks: proseBlocks(item.children, words) })),
          },
        ]
      case 'quote':
        return [{ kind: 'quote', blocks: proseBlocks(block.children, words) }]
      default:
        return []
    }
  })
}
