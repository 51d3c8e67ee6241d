import type { CodeDoc } from './code-doc.ts'

/** Codes about what a page cannot show. */
export type PageCode = 'bar-too-wide' | 'missing-character'

export const PAGE_CODES: Readonly<Record<PageCode, CodeDoc>> = {
  'bar-too-wide': {
    severity: 'note',
    says: 'The bar does not fit on one line, even set a fifth smaller, so the page divides it between two beats.',
    covers: 'The line that opens the bar.',
    bad: 'bar 1 time 12/8 grid 16 (in large print)',
    good: 'bar 1 time 6/8 grid 16 (in large print)',
  },
  'missing-character': {
    severity: 'warning',
    says: 'None of the fonts the page is set in has this character, so it is left out of the print.',
    covers: 'The words it stands in.',
    bad: 'A lucky sign: 福.',
    good: 'A lucky sign.',
  },
}
