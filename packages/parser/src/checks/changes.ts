import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredAside, FingeredMoment } from '../hand/finger-part.ts'
import { gripKey } from '../hand/grip.ts'
import {
  changesInOrder,
  fastestTempo,
  type HandChange,
  handChanges,
  hundredths,
  needsHand,
} from '../hand/hand-changes.ts'
import type { HandOnNeck } from '../hand/rank-for-hand.ts'
import type { LessonSettings } from '../score/lesson.ts'
import type { Part } from '../score/part.ts'
import { CARE } from './care.ts'
import { barWord, fingersWord, secondsWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** Shares of the available time from which a change is worth a note, a warning, an error. */
const TIGHT = 0.7
const TOO_FAST = 1
const HOPELESS = 2

/**
 * A change of the fretting hand must fit in the time between the last stroke that needs the old grip and the first that needs the
 * new, at repeats too, and into, within and out of another way to play. Judged to the hundredth of a second, as it is printed:
 * nothing finer is known of a hand.
 */
export const changes: Rule = {
  codes: ['change-tight', 'change-too-fast', 'change-too-fast-at-goal'],
  check: ({ lesson, on, hands }) =>
    lesson.parts.flatMap((part): readonly FindingDraft[] => {
      const played = hands.get(part.id)
      if (played === undefined) return []
      const seen = new Set<string>()
      // The same grips may have other fingers elsewhere, and need another time.
      const isNew = ({ from, to, availableS, neededS }: HandChange): boolean => {
        const key = `${gripKey(from.grip)}>${gripKey(to.grip)}@${availableS.toFixed(3)}-${hundredths(neededS)}`
        const known = seen.has(key)
        seen.add(key)
        return !known
      }
      const main = handChanges(on, part, played.moments).map((change) => ({ change, leaves: false, aside: false }))
      const others = played.asides.flatMap((aside) => changesAside(on, part, { aside, main: played.moments }))
      return [...main, ...others]
        .filter(({ change }) => isNew(change))
        .flatMap((one) => judge(one, lesson.settings) ?? [])
    }),
}

/** A change to judge. Of one that leaves another way to play, the way left is what has to be mended. */
interface JudgedChange {
  readonly change: HandChange
  readonly aside: boolean
  readonly leaves: boolean
}

/** The changes into, within and out of another way to play a stretch of a bar. */
function changesAside(
  on: HandOnNeck,
  part: Part,
  { aside, main }: { readonly aside: FingeredAside; readonly main: readonly FingeredMoment[] },
): readonly JudgedChange[] {
  const before = main.slice(Math.max(0, aside.after - LOOK_AROUND), aside.after).findLast(needsHand)
  const next = main
    .slice(aside.after, aside.after + LOOK_AROUND)
    .find((moment) => moment.start >= aside.end && needsHand(moment))
  const line = [before, ...aside.moments, next].filter((moment) => moment !== undefined)
  const own = new Set(aside.moments)
  return changesInOrder(on, part.repeats, line)
    .filter(({ from, to }) => own.has(from) || own.has(to))
    .map((change) => ({ change, aside: true, leaves: !own.has(change.to) }))
}

/** Strikes looked through before and after another way to play for one that presses a string. */
const LOOK_AROUND = 64

function judge(
  { change, aside, leaves }: JudgedChange,
  { goalBpm, tempoBpm }: Pick<LessonSettings, 'goalBpm' | 'tempoBpm'>,
): FindingDraft | null {
  const { availableS, neededS, from, to } = change
  const { tempoBpm: atBpm } = from.bar
  const way = leaves ? ', coming from the other way to play,' : aside ? ', played the other way,' : ''
  const back = change.atRepeat ? `, coming from ${barWord(from.bar)} at the repeat,` : ''
  const what = `the change in ${placeName(to)}${way}${back}`
  const base = {
    span: (leaves ? from : to).event.span,
    bar: to.bar.number,
    ...(change.atRepeat
      ? { related: [{ span: from.event.span, message: 'the last stroke before the repeat that needs the hand' }] }
      : {}),
  }
  const share = hundredths(neededS) / Math.max(1, hundredths(availableS))
  if (share > TOO_FAST) {
    return {
      ...base,
      code: 'change-too-fast',
      severity: share > HOPELESS ? 'error' : 'warning',
      message: `${what} is too fast at ${atBpm}: ${timesWord(change, availableS)}`,
      help: `${moreTime(change.from)}, choose a nearer grip, or play at ${fastestTempo(change)} or slower; ${CARE}`,
    }
  }
  const atGoalS = goalBpm === null ? availableS : (availableS * tempoBpm) / goalBpm
  if (goalBpm !== null && hundredths(neededS) > hundredths(atGoalS)) {
    const goalLimit = Math.floor((fastestTempo(change) * tempoBpm) / atBpm)
    return {
      ...base,
      code: 'change-too-fast-at-goal',
      message: `${what} fits at ${atBpm} but not at the goal of ${goalBpm}: ${timesWord(change, atGoalS)}`,
      help: `set the goal to ${goalLimit} or lower, or choose a nearer grip; ${CARE}`,
    }
  }
  if (share <= TIGHT) return null
  return {
    ...base,
    code: 'change-tight',
    message: `${what} is tight: ${timesWord(change, availableS)}`,
    help: `loop this bar slowly first; it stops fitting above ${fastestTempo(change)}; ${CARE}`,
  }
}

/** How the hand could leave sooner: a strummed stroke can be a scratch, whatever else must be shorter. */
function moreTime({ event }: FingeredMoment): string {
  const strummed = event.stroke === 'down' || event.stroke === 'up'
  return strummed ? 'lift before it (write `x` for the stroke before)' : 'leave more time before it'
}

function placeName({ bar, event }: FingeredMoment): string {
  return `${barWord(bar)}, beat ${Math.floor(event.at / bar.beatTicks) + 1 + bar.firstBeat}`
}

function timesWord({ fingers, neededS }: HandChange, availableS: number): string {
  const needs = fingers.length > 1 ? 'need' : 'needs'
  return `${fingersWord(fingers)} ${needs} ${secondsWord(neededS)} and there ${availableS < 1 ? 'is' : 'are'} ${secondsWord(availableS)}`
}
