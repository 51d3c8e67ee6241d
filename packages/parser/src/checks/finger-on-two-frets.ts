import type { FindingDraft } from '../finding/finding-draft.ts'
import { gripFault } from './grip-fault.ts'
import { placeOf } from './grips-of.ts'
import { fingerWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** A finger presses one fret at a time. */
export const fingerOnTwoFrets: Rule = {
  codes: ['finger-on-two-frets'],
  check: ({ grips }) =>
    grips.flatMap((judged): readonly FindingDraft[] => {
      const fault = gripFault(judged)
      if (fault?.kind !== 'two-frets') return []
      const [one, other] = fault.frets
      return [
        {
          ...placeOf(judged),
          code: 'finger-on-two-frets',
          message: `${judged.name} wants ${fingerWord(fault.finger)} on fret ${one} and fret ${other} at once`,
          help: 'give one of the two frets to another finger, or leave the fingers out and let them be worked out',
        },
      ]
    }),
}
