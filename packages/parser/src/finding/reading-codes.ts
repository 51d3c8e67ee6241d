import { BLOCK_CODES, type BlockCode } from './block-codes.ts'
import type { CodeDoc } from './code-doc.ts'
import { FRONT_MATTER_CODES, type FrontMatterCode } from './front-matter-codes.ts'
import { REFERENCE_CODES, type ReferenceCode } from './reference-codes.ts'
import { SHAPE_CODES, type ShapeCode } from './shape-codes.ts'

/** Codes of what cannot be read as written, outside the lines of a part. */
export type ReadingCode = FrontMatterCode | BlockCode | ShapeCode | ReferenceCode

export const READING_CODES: Readonly<Record<ReadingCode, CodeDoc>> = {
  ...FRONT_MATTER_CODES,
  ...BLOCK_CODES,
  ...SHAPE_CODES,
  ...REFERENCE_CODES,
}
