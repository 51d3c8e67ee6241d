import { BEAT_CODES } from './beat-codes.ts'
import { BLOCK_CODES } from './block-codes.ts'
import { BOOK_CODES } from './book-codes.ts'
import type { CodeDoc } from './code-doc.ts'
import type { FindingCode } from './codes.ts'
import { FRONT_MATTER_CODES } from './front-matter-codes.ts'
import { HAND_CODES } from './hand-codes.ts'
import { HARMONY_CODES } from './harmony-codes.ts'
import { LINE_CODES } from './line-codes.ts'
import { PAGE_CODES } from './page-codes.ts'
import { PLAYING_CODES } from './playing-codes.ts'
import { REFERENCE_CODES } from './reference-codes.ts'
import { SHAPE_CODES } from './shape-codes.ts'
import { STROKE_CODES } from './stroke-codes.ts'

/** Codes about one thing. */
export interface CodeGroup {
  /** What they are about, as a heading. */
  readonly about: string
  /** In the order they are documented. */
  readonly codes: readonly FindingCode[]
}

/** Every code once, in groups in the order in which a lesson is written. */
export const CODE_GROUPS: readonly CodeGroup[] = [
  group('Settings at the top', FRONT_MATTER_CODES),
  group('Blocks and braces', BLOCK_CODES),
  group('Shapes', SHAPE_CODES),
  group('Lines of a part', LINE_CODES),
  group('Beats', BEAT_CODES),
  group('Stroke signs', STROKE_CODES),
  group('What sounds before a stroke', PLAYING_CODES),
  group('Names that point elsewhere', REFERENCE_CODES),
  group('Books', BOOK_CODES),
  group('The hands', HAND_CODES),
  group('Harmony', HARMONY_CODES),
  group('The page', PAGE_CODES),
]

function group(about: string, docs: Readonly<Partial<Record<FindingCode, CodeDoc>>>): CodeGroup {
  return { about, codes: Object.keys(docs) as readonly FindingCode[] }
}
