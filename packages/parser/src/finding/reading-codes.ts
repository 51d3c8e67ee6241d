import type { CodeDoc } from './code-doc.ts'
import { FRONT_MATTER_CODES, type FrontMatterCode } from './front-matter-codes.ts'

/** Codes of what cannot be read as written, outside the lines of a part. */
export type ReadingCode = FrontMatterCode

export const READING_CODES: Readonly<Record<ReadingCode, CodeDoc>> = { ...FRONT_MATTER_CODES }
