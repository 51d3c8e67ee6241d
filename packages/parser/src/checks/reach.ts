import type { FindingDraft } from '../finding/finding-draft.ts'
import { type Fingering, fingerOnTwoFrets, type Grip } from '../hand/grip.ts'
import { type HandOnNeck, rankForHand, spanOf } from '../hand/rank-for-hand.ts'
import { REACHES, type Reach } from '../hand/span-limits.ts'
import { CARE } from './care.ts'
import { type JudgedGrip, placeOf } from './grips-of.ts'
import { listWords } from './hand-words.ts'
import type { Rule } from './rule.ts'

/**
 * Two fingers must reach their frets: spans along the neck against limits for the lesson's hand and scale length. A shape that is
 * moved or added to is only reported where it asks for more than on its own line.
 */
export const reach: Rule = {
  codes: ['stretch', 'stretch-not-playable'],
  check: ({ on, grips }) => {
    const own = new Map<string, Reach>()
    return grips.flatMap((judged): readonly FindingDraft[] => {
      const { fingering, grip, moment, name } = judged
      if (fingering === null || fingerOnTwoFrets(grip, fingering) !== null) return []
      const widest = spanOf(grip, fingering, on)
      if (moment === null) own.set(name, widest?.reach ?? 'comfortable')
      if (widest === null || widest.reach === 'comfortable') return []
      const home = own.get(moment?.shape?.name ?? '') ?? 'comfortable'
      if (moment !== null && REACHES.indexOf(widest.reach) <= REACHES.indexOf(home)) return []
      const [low, high] = widest.pair.split('-')
      const hand = on.hand === 'small' ? 'a small hand' : 'an adult hand'
      const facts = `fingers ${low} and ${high} are ${Math.round(widest.spanMm)} mm apart on frets ${widest.frets[0]} and ${widest.frets[1]}`
      const mend = mendOf(judged, widest.reach, on)
      if (widest.reach === 'not playable') {
        return [
          {
            ...placeOf(judged),
            code: 'stretch-not-playable',
            message: `${name} is out of reach for ${hand}: ${facts}`,
            help: `${mend}; ${CARE}`,
          },
        ]
      }
      const hard = widest.reach === 'very hard'
      return [
        {
          ...placeOf(judged),
          code: 'stretch',
          severity: hard ? 'warning' : 'note',
          message: `${name} is ${hard ? 'a very hard stretch' : 'a stretch'} for ${hand}: ${facts}`,
          help: `${mend}; ${CARE}`,
        },
      ]
    })
  },
}

/** How many of the easiest fingerings may be proposed instead. */
const NEAR = 6

/** Other fingers where some reach with less, else another place or fewer strings. */
function mendOf({ grip, moment }: JudgedGrip, reached: Reach, on: HandOnNeck): string {
  const free = { ...grip, presses: grip.presses.map((press) => ({ ...press, finger: null })) }
  const easier = rankForHand(free, on)
    .slice(0, NEAR)
    .find((one) => REACHES.indexOf(spanOf(grip, one.fingering, on)?.reach ?? 'comfortable') < REACHES.indexOf(reached))
  const elsewhere = reached === 'stretch' ? 'try it higher up the neck first' : 'play it higher up the neck'
  if (easier === undefined) return `${elsewhere}, or leave a string out`
  const other =
    moment === null
      ? `try \`fingers ${fingersOnLine(grip, easier.fingering, on.neck.strings)}\``
      : `try it with fingers ${listWords(easier.fingering.map(String))}, from the lowest fret up`
  return `${other}, or ${elsewhere.replace('try', 'practise')}`
}

/** The fingers of a grip as a shape line lists them: one for each string from the thickest on, `0` where it is open, `x` where silent. */
function fingersOnLine(grip: Grip, fingering: Fingering, strings: number): string {
  const fingers = Array.from({ length: strings }, (_, index) => {
    const string = strings - index
    const at = grip.presses.findIndex((press) => press.string === string)
    return at >= 0 ? String(fingering[at]) : grip.open.includes(string) ? '0' : 'x'
  })
  return fingers.join(' ')
}
