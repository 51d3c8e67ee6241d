import type { DocumentBlock } from './document-block.ts'

/** The block and those inside it, in order. */
export function withInner(block: DocumentBlock): readonly DocumentBlock[] {
  switch (block.kind) {
    case 'quote':
    case 'container':
      return [block, ...block.blocks.flatMap(withInner)]
    case 'list':
      return [block, ...block.items.flatMap((item) => item.blocks.flatMap(withInner))]
    default:
      return [block]
  }
}
