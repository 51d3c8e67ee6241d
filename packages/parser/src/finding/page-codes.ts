import type { CodeDoc } from './code-doc.ts'

/** Codes about what a page cannot show. */
export type PageCode = never

export const PAGE_CODES: Readonly<Record<PageCode, CodeDoc>> = {}
