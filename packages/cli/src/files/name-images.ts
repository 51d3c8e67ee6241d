import type { Block, Inline } from '@barwise/parser'

/** How a picture is called from now on, given what the lesson calls it. */
export type Rename = (source: string) => string

/**
 * The blocks with every picture called by its new name. Two lessons of a book in different folders may call different
 * pictures by one name; named from the book's folder on, each has its own.
 */
export function nameImages(blocks: readonly Block[], rename: Rename): readonly Block[] {
  return blocks.map((block): Block => {
    switch (block.kind) {
      case 'heading':
      case 'paragraph':
        return { ...block, children: nameAmong(block.children, rename) }
      case 'list':
        return {
          ...block,
          items: block.items.map((item) => ({ ...item, children: nameImages(item.children, rename) })),
        }
      case 'quote':
      case 'container':
        return { ...block, children: nameImages(block.children, rename) }
      case 'table': {
        const cells = (row: (typeof block.rows)[number]): (typeof block.rows)[number] =>
          row.map((cell) => nameAmong(cell, rename))
        return { ...block, header: cells(block.header), rows: block.rows.map(cells) }
      }
      default:
        return block
    }
  })
}

function nameAmong(words: readonly Inline[], rename: Rename): readonly Inline[] {
  return words.map((inline): Inline => {
    if (inline.kind === 'image') return { ...inline, source: rename(inline.source) }
    return 'children' in inline ? { ...inline, children: nameAmong(inline.children, rename) } : inline
  })
}
