import type { FindingDraft } from '../finding/finding-draft.ts'
import { gripFault } from './grip-fault.ts'
import { placeOf } from './grips-of.ts'
import { fingerWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** A finger lying on several strings stops each string under it: none of them can sound open or at a lower fret. */
export const barreOverLowerFret: Rule = {
  codes: ['barre-over-lower-fret'],
  check: ({ grips }) =>
    grips.flatMap((judged): readonly FindingDraft[] => {
      const fault = gripFault(judged)
      if (fault?.kind !== 'covered') return []
      const { finger, fret, string } = fault
      return [
        {
          ...placeOf(judged),
          code: 'barre-over-lower-fret',
          message: `in ${judged.name} ${fingerWord(finger)} lies across fret ${fret} and stops string ${string}, which must sound lower`,
          help: `press the strings beside string ${string} with two fingers, or silence string ${string} with \`x\``,
        },
      ]
    }),
}
