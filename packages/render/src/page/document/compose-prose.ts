import type { Block } from '@barwise/parser'
import { composeText } from './compose-text.ts'
import type { DocumentBlock } from './document-block.ts'
import type { PageWords } from './page-words.ts'
import { setWords } from './typography.ts'
import { pageWords } from './words-of-language.ts'

/** The words of a book as document blocks: headings, text and words of care; what belongs to a lesson is left out. */
export function composeProse(blocks: readonly Block[], language: string): readonly DocumentBlock[] {
  return proseBlocks(blocks, pageWords(language))
}

function proseBlocks(blocks: readonly Block[], words: PageWords): readonly DocumentBlock[] {
  return blocks.flatMap((block): readonly DocumentBlock[] => {
    const inner = (children: readonly Block[]): readonly DocumentBlock[] => proseBlocks(children, words)
    if (block.kind === 'heading') return [{ kind: 'heading', level: 2, children: setWords(block.children, words) }]
    if (block.kind === 'container' && block.role === 'care')
      return [{ kind: 'container', role: 'care', title: words.care, blocks: inner(block.children) }]
    return composeText(block, words, inner) ?? []
  })
}
