import type { FindingDraft } from '../finding/finding-draft.ts'
import { fingerOnTwoFrets } from '../hand/grip.ts'
import { type FingerAt, widestSpan } from '../hand/span-limits.ts'
import { CARE } from './care.ts'
import { placeOf } from './grips-of.ts'
import type { Rule } from './rule.ts'

/** Two fingers must reach their frets: spans along the neck against limits for the lesson's hand and scale length. */
export const reach: Rule = {
  codes: ['stretch', 'stretch-not-playable'],
  check: ({ lesson, neck, grips }) =>
    grips.flatMap((judged): readonly FindingDraft[] => {
      if (judged.fingering === null || fingerOnTwoFrets(judged.grip, judged.fingering) !== null) return []
      const fingers = judged.fingering.flatMap((finger, at): readonly FingerAt[] => {
        const fret = judged.grip.presses[at]?.fret
        return finger === 'T' || fret === undefined ? [] : [{ finger, fret }]
      })
      const widest = widestSpan(neck, fingers, lesson.settings.hand)
      if (widest === null || widest.reach === 'comfortable') return []
      const [low, high] = widest.pair.split('-')
      const hand = lesson.settings.hand === 'small' ? 'a small hand' : 'an adult hand'
      const facts = `fingers ${low} and ${high} are ${Math.round(widest.spanMm)} mm apart on frets ${widest.frets[0]} and ${widest.frets[1]}`
      if (widest.reach === 'not playable') {
        return [
          {
            ...placeOf(judged),
            code: 'stretch-not-playable',
            message: `${judged.name} is out of reach for ${hand}: ${facts}`,
            help: `play it higher up the neck, or leave a string out; ${CARE}`,
          },
        ]
      }
      const hard = widest.reach === 'very hard'
      return [
        {
          ...placeOf(judged),
          code: 'stretch',
          severity: hard ? 'warning' : 'note',
          message: `${judged.name} is ${hard ? 'a very hard stretch' : 'a stretch'} for ${hand}: ${facts}`,
          help: `try it higher up the neck first, or leave a string out; ${CARE}`,
        },
      ]
    }),
}
