import type { Lesson, Part } from '@barwise/parser'
import type { FontSet } from '../fonts/font-set.ts'
import { buildPiece } from './layout/piece.ts'
import { barContents } from './rhythm/write-rhythm.ts'
import { engraveStyle } from './style.ts'
import { drawBareSystem } from './vexflow-door/bare-system.ts'
import { SilentContext } from './vexflow-door/silent-context.ts'

/**
 * Readies a part for measuring: the answer draws all of its bars with VexFlow alone into a context that keeps nothing, `barsPerSystem` bars
 * at a time. What is prepared here is not part of the time to measure.
 */
export function barePart(input: {
  readonly lesson: Lesson
  readonly part: Part
  readonly fonts: FontSet
  readonly barsPerSystem: number
}): () => void {
  const { lesson, part, fonts, barsPerSystem } = input
  const style = engraveStyle(4.5, 0)
  const pieces = barContents(part.bars, part.repeats).map((content) =>
    buildPiece({
      part,
      stretch: { content, from: 0, to: content.bar.length, opens: false, excerpt: false },
      instrument: lesson.instrument,
      style,
      fonts,
      before: null,
      after: null,
    }),
  )
  return () => {
    for (let i = 0; i < pieces.length; i += barsPerSystem)
      drawBareSystem(pieces.slice(i, i + barsPerSystem), new SilentContext(), fonts)
  }
}
