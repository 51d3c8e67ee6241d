import type { CodeDoc } from './code-doc.ts'

/** Codes about what a page cannot show. */
export type PageCode = 'bar-too-wide' | 'missing-character'

export const PAGE_CODES: Readonly<Record<PageCode, CodeDoc>> = {
  'bar-too-wide': {
    severity: 'note',
    says: 'The bar does not fit on one line, even set a fifth smaller, so the page divides it between two beats.',
    covers: 'The line that opens the bar.',
    bad: barOf(16),
    good: barOf(8),
  },
  'missing-character': {
    severity: 'warning',
    says: 'None of the fonts the page is set in has this character, so it is left out of the print.',
    covers: 'The words it stands in.',
    bad: 'A lucky sign: 福.',
    good: 'A lucky sign.',
  },
}

/** A lesson of one bar with so many quarter beats, scratched in sixteenths. */
function barOf(beats: number): string {
  const strokes = Array.from({ length: beats * 4 }, () => 'x').join(' ')
  return `---\ntitle: Long bar\ntime: ${beats}/4\n---\n\n:::part{#long}\nbar 1\n  1-${beats}: ${strokes}\n:::\n`
}
