import type { FindingDraft } from '../finding/finding-draft.ts'
import type { Key } from '../score/pitch.ts'
import type { Shape } from '../score/shape.ts'
import { parseChordSymbol } from '../theory/chord-symbol.ts'
import { fingeredMidis, judgeHarmony } from '../theory/judge-harmony.ts'
import { suggestName } from '../theory/name-chord.ts'
import { pitchClass } from '../theory/note-name.ts'
import { codeOf, disagreement } from './chord-words.ts'
import type { Rule } from './rule.ts'

/** A shape sounds what its label says, unless it is marked `implies`. One or two different notes never give more than a note. */
export const shapeLabel: Rule = {
  codes: ['chord-contradicts', 'chord-extra-tones', 'chord-missing-tones', 'wrong-slash-bass'],
  check: ({ lesson }) =>
    lesson.shapes.flatMap((shape): readonly FindingDraft[] => {
      const chord = shape.label === null || shape.implied ? null : parseChordSymbol(shape.label)
      const midis = fingeredMidis(shape, lesson.instrument)
      const judged = chord === null ? null : judgeHarmony(midis, chord)
      const code = judged === null ? null : codeOf(judged)
      if (chord === null || judged === null || code === null) return []
      const what = shape.name === chord.text ? `\`${shape.name}\`` : `\`${shape.name}\` is labelled ${chord.text}, but`
      const text = disagreement(chord.text, judged)
      return [
        {
          code,
          ...(soundsThree(midis) ? {} : { severity: 'note' as const }),
          span: shape.span,
          file: shape.file,
          message: shape.name === chord.text ? `${what} does not fit its frets: ${text}` : `${what} ${text}`,
          help: helpFor(shape, midis, lesson.settings.key),
        },
      ]
    }),
}

/** Whether three or more different notes sound. */
export function soundsThree(midis: readonly number[]): boolean {
  return new Set(midis.map(pitchClass)).size >= 3
}

function helpFor(shape: Shape, midis: readonly number[], key: Key): string {
  const named = suggestName(midis, { key })
  const rename =
    named === null ? 'write' : `write \`chord ${named.name.symbol}\` if the frets are right, mend them if not, or write`
  return `${rename} \`implies ${shape.label}\` to keep the name all the same`
}
