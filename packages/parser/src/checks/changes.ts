import type { FindingDraft } from '../finding/finding-draft.ts'
import { gripKey } from '../hand/grip.ts'
import { fastestTempo, type HandChange, handChanges } from '../hand/hand-changes.ts'
import { CARE } from './care.ts'
import { fingersWord, secondsWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** Shares of the available time from which a change is worth a note, a warning, an error. */
const TIGHT = 0.7
const TOO_FAST = 1
const HOPELESS = 2

/** A change of the fretting hand must fit in the time between the last stroke that needs the old grip and the first that needs the new. */
export const changes: Rule = {
  codes: ['change-tight', 'change-too-fast', 'change-too-fast-at-goal'],
  check: ({ lesson, neck, moments }) => {
    const drafts: FindingDraft[] = []
    for (const list of moments.values()) {
      const seen = new Set<string>()
      for (const change of handChanges(neck, list)) {
        const key = `${gripKey(change.from.grip)}>${gripKey(change.to.grip)}@${change.availableS.toFixed(3)}`
        if (seen.has(key)) continue
        seen.add(key)
        const draft = judge(change, lesson.settings.goalBpm, lesson.settings.tempoBpm)
        if (draft !== null) drafts.push(draft)
      }
    }
    return drafts
  },
}

function judge(change: HandChange, goalBpm: number | null, tempoBpm: number): FindingDraft | null {
  const share = change.neededS / change.availableS
  const { bar, event } = change.to
  const where = `bar ${bar.number}, beat ${Math.floor(event.at / bar.beatTicks) + 1 + bar.firstBeat}`
  const need = `${fingersWord(change.fingers)} need${change.fingers.length > 1 ? '' : 's'} ${secondsWord(change.neededS)} and there ${change.availableS < 1 ? 'is' : 'are'} ${secondsWord(change.availableS)}`
  const base = { span: event.span, bar: bar.number }
  const mend = `leave more time before it, choose a nearer grip, or play at ${fastestTempo(change)} or slower; ${CARE}`
  if (share > TOO_FAST) {
    const severity = share > HOPELESS ? 'error' : 'warning'
    return {
      ...base,
      code: 'change-too-fast',
      severity,
      message: `the change in ${where} is too fast at ${bar.tempoBpm}: ${need}`,
      help: mend,
    }
  }
  const atGoal = goalBpm === null ? share : (share * goalBpm) / tempoBpm
  if (atGoal > TOO_FAST && goalBpm !== null) {
    return {
      ...base,
      code: 'change-too-fast-at-goal',
      message: `the change in ${where} fits at ${bar.tempoBpm} but not at the goal of ${goalBpm}: ${fingersWord(change.fingers)} need${change.fingers.length > 1 ? '' : 's'} ${secondsWord(change.neededS)}`,
      help: `set the goal to ${fastestTempo(change)} or lower, or choose a nearer grip; ${CARE}`,
    }
  }
  if (share <= TIGHT) return null
  return {
    ...base,
    code: 'change-tight',
    message: `the change in ${where} is tight: ${need}`,
    help: `loop this bar slowly first; it stops fitting above ${fastestTempo(change)}; ${CARE}`,
  }
}
