import type { CodeDoc } from './code-doc.ts'

/** Codes of what cannot be read as written. */
export type ReadingCode = never

export const READING_CODES: Readonly<Record<ReadingCode, CodeDoc>> = {}
