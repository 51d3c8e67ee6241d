import { BAR_CODES, type BarCode } from './bar-codes.ts'
import { BOOK_CODES, type BookCode } from './book-codes.ts'
import type { CodeDoc } from './code-doc.ts'
import { HAND_CODES, type HandCode } from './hand-codes.ts'
import { HARMONY_CODES, type HarmonyCode } from './harmony-codes.ts'
import { PAGE_CODES, type PageCode } from './page-codes.ts'
import { READING_CODES, type ReadingCode } from './reading-codes.ts'

/** Every code a finding can carry. Codes are never renamed or reused. */
export type FindingCode = ReadingCode | BarCode | BookCode | HandCode | HarmonyCode | PageCode

/** The explanation of every code. */
export const CODE_DOCS: Readonly<Record<FindingCode, CodeDoc>> = {
  ...READING_CODES,
  ...BAR_CODES,
  ...BOOK_CODES,
  ...HAND_CODES,
  ...HARMONY_CODES,
  ...PAGE_CODES,
}
