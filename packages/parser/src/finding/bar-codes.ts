import { BEAT_CODES, type BeatCode } from './beat-codes.ts'
import type { CodeDoc } from './code-doc.ts'
import { LINE_CODES, type LineCode } from './line-codes.ts'
import { PLAYING_CODES, type PlayingCode } from './playing-codes.ts'
import { STROKE_CODES, type StrokeCode } from './stroke-codes.ts'

/** Codes of what stands inside a part. */
export type BarCode = LineCode | BeatCode | StrokeCode | PlayingCode

export const BAR_CODES: Readonly<Record<BarCode, CodeDoc>> = {
  ...LINE_CODES,
  ...BEAT_CODES,
  ...STROKE_CODES,
  ...PLAYING_CODES,
}
