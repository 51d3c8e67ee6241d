import type { FindingDraft } from '../finding/finding-draft.ts'
import { gripFault } from './grip-fault.ts'
import { placeOf } from './grips-of.ts'
import type { Rule } from './rule.ts'

/** A hammer-on needs a finger of its own beside those that hold what goes on. */
export const noFreeFinger: Rule = {
  codes: ['no-free-finger'],
  check: ({ grips }) =>
    grips.flatMap((judged): readonly FindingDraft[] => {
      if (judged.moment?.event.technique !== 'hammer' || gripFault(judged)?.kind !== 'unformable') return []
      return [
        {
          ...placeOf(judged),
          code: 'no-free-finger',
          message: 'no finger is free for the hammer-on: the notes that go on need them all',
          help: 'let one of the held notes go, or strike the note instead',
        },
      ]
    }),
}
