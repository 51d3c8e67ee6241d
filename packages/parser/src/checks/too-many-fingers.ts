import type { FindingDraft } from '../finding/finding-draft.ts'
import { gripFault } from './grip-fault.ts'
import { placeOf } from './grips-of.ts'
import { needsFreeFinger } from './no-free-finger.ts'
import type { Rule } from './rule.ts'

/**
 * One hand has four fingers: a grip that needs more, barres included, cannot be held. What hammer-ons and pull-offs ask for is left
 * to their own rule.
 */
export const tooManyFingers: Rule = {
  codes: ['too-many-fingers'],
  check: ({ grips }) =>
    grips.flatMap((judged): readonly FindingDraft[] => {
      if (needsFreeFinger(judged) || gripFault(judged)?.kind !== 'unformable') return []
      return [
        {
          ...placeOf(judged),
          code: 'too-many-fingers',
          message: `${judged.name} presses ${judged.grip.presses.length} places that four fingers cannot hold at once`,
          help: 'leave a string out with `x`, or choose frets that a barre can share',
        },
      ]
    }),
}
