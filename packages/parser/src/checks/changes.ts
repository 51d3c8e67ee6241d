import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredMoment } from '../hand/finger-part.ts'
import { gripKey } from '../hand/grip.ts'
import { fastestTempo, type HandChange, handChanges, hundredths } from '../hand/hand-changes.ts'
import { CARE } from './care.ts'
import { barWord, fingersWord, secondsWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** Shares of the available time from which a change is worth a note, a warning, an error. */
const TIGHT = 0.7
const TOO_FAST = 1
const HOPELESS = 2

/**
 * A change of the fretting hand must fit in the time between the last stroke that needs the old grip and the first that needs the
 * new, at repeats too. Judged to the hundredth of a second, as it is printed: nothing finer is known of a hand.
 */
export const changes: Rule = {
  codes: ['change-tight', 'change-too-fast', 'change-too-fast-at-goal'],
  check: ({ lesson, on, hands }) =>
    lesson.parts.flatMap((part): readonly FindingDraft[] => {
      const moments = hands.get(part.id)?.moments ?? []
      const drafts: FindingDraft[] = []
      const seen = new Set<string>()
      for (const change of handChanges(on.neck, part, moments)) {
        const key = `${gripKey(change.from.grip)}>${gripKey(change.to.grip)}@${change.availableS.toFixed(3)}`
        if (seen.has(key)) continue
        seen.add(key)
        const draft = judge(change, lesson.settings.goalBpm, lesson.settings.tempoBpm)
        if (draft !== null) drafts.push(draft)
      }
      return drafts
    }),
}

function judge(change: HandChange, goalBpm: number | null, tempoBpm: number): FindingDraft | null {
  const { availableS, neededS, to } = change
  const { bar } = to
  const what = `the change in ${placeName(to)}${change.atRepeat ? `, coming from ${barWord(change.from.bar)} at the repeat,` : ''}`
  const base = {
    span: to.event.span,
    bar: bar.number,
    ...(change.atRepeat
      ? {
          related: [{ span: change.from.event.span, message: 'the last stroke before the repeat that needs the hand' }],
        }
      : {}),
  }
  const share = hundredths(neededS) / Math.max(1, hundredths(availableS))
  if (share > TOO_FAST) {
    return {
      ...base,
      code: 'change-too-fast',
      severity: share > HOPELESS ? 'error' : 'warning',
      message: `${what} is too fast at ${bar.tempoBpm}: ${timesWord(change, availableS)}`,
      help: `${moreTime(change.from)}, choose a nearer grip, or play at ${fastestTempo(change)} or slower; ${CARE}`,
    }
  }
  const atGoalS = goalBpm === null ? availableS : (availableS * tempoBpm) / goalBpm
  if (goalBpm !== null && hundredths(neededS) > hundredths(atGoalS)) {
    const goalLimit = Math.floor((fastestTempo(change) * tempoBpm) / change.from.bar.tempoBpm)
    return {
      ...base,
      code: 'change-too-fast-at-goal',
      message: `${what} fits at ${bar.tempoBpm} but not at the goal of ${goalBpm}: ${timesWord(change, atGoalS)}`,
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
