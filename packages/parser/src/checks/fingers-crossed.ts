import type { FindingDraft } from '../finding/finding-draft.ts'
import { gripFault } from './grip-fault.ts'
import { placeOf } from './grips-of.ts'
import { fingersWord, fingerWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** Fingers follow the frets: a higher finger below a lower one is possible, but hardly ever meant. */
export const fingersCrossed: Rule = {
  codes: ['fingers-crossed'],
  check: ({ grips }) =>
    grips.flatMap((judged): readonly FindingDraft[] => {
      const fault = gripFault(judged)
      if (fault?.kind !== 'crossed') return []
      const [low, high] = fault.fingers
      return [
        {
          ...placeOf(judged),
          code: 'fingers-crossed',
          message: `in ${judged.name} ${fingerWord(high)} presses a lower fret than ${fingerWord(low)}`,
          help: `swap ${fingersWord(fault.fingers)}`,
        },
      ]
    }),
}
