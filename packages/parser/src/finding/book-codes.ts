import type { CodeDoc } from './code-doc.ts'

/** Codes about the file of a book and its shape file. */
export type BookCode = 'empty-book' | 'lesson-not-linked' | 'repeated-lesson' | 'misplaced-block'

const book = (list: string): string => `---\ntitle: Thursdays\n---\n\n# First hand\n\n${list}\n`

export const BOOK_CODES: Readonly<Record<BookCode, CodeDoc>> = {
  'empty-book': {
    severity: 'error',
    says: 'The book names no lesson. Its lessons are the links to Markdown files in its lists.',
    covers: 'The line that opens the settings.',
    bad: book('See [Ferry Queue](ferry-queue.md).'),
    good: book('- [Ferry Queue](ferry-queue.md)'),
  },
  'lesson-not-linked': {
    severity: 'error',
    says: 'An item of a list names a Markdown file, but not as a link, so it is no lesson of the book.',
    covers: 'The name.',
    bad: book('- [Ferry Queue](ferry-queue.md)\n- paper-boats.md'),
    good: book('- [Ferry Queue](ferry-queue.md)\n- [Paper Boats](paper-boats.md)'),
  },
  'repeated-lesson': {
    severity: 'error',
    says: 'The book lists a lesson that it has listed already, or its own file, or its shape file.',
    covers: 'The address of the link.',
    bad: book('- [Ferry Queue](ferry-queue.md)\n- [Ferry Queue](ferry-queue.md)'),
    good: book('- [Ferry Queue](ferry-queue.md)'),
  },
  'misplaced-block': {
    severity: 'error',
    says: 'A block stands where nobody reads it: a part or shapes in the file of a book, a part in its shape file, or shapes without the lines around them.',
    covers: 'The first line of the block, or of the shapes.',
    bad: book('- [Ferry Queue](ferry-queue.md)\n\n:::shapes\nEm 0 2 2 0 0 0\n:::'),
    good: book('- [Ferry Queue](ferry-queue.md)'),
  },
}
