import type { FindingDraft } from '../finding/finding-draft.ts'
import { CEILING_HZ, HARD_HZ, handCyclesHz } from '../hand/strum-speed.ts'
import type { Bar, Part } from '../score/part.ts'
import { CARE } from './care.ts'
import { barWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** How fast the hand has to swing, at the lesson's tempo and at its goal. */
export const strummingSpeed: Rule = {
  codes: ['strumming-fast', 'strumming-not-playable'],
  check: ({ lesson }) => lesson.parts.flatMap((part) => fastest(part, lesson.settings.goalBpm)),
}

function fastest(part: Part, goalBpm: number | null): readonly FindingDraft[] {
  let worst: { readonly bar: Bar; readonly hz: number; readonly tempoBpm: number } | null = null
  for (const bar of part.bars) {
    for (const tempoBpm of [bar.tempoBpm, goalBpm ?? bar.tempoBpm]) {
      const hz = handCyclesHz(bar, tempoBpm)
      if (hz !== null && hz > (worst?.hz ?? HARD_HZ)) worst = { bar, hz, tempoBpm }
    }
  }
  if (worst === null) return []
  const { bar, hz, tempoBpm } = worst
  const atGoal = tempoBpm !== bar.tempoBpm
  const what = `${barWord(bar)} asks for ${hz.toFixed(1)} swings a second at ${atGoal ? 'the goal of ' : ''}${tempoBpm}`
  const mend = `bring the ${atGoal ? 'goal' : 'tempo'} down to ${Math.floor((tempoBpm * HARD_HZ) / hz)}, or write fewer strokes; ${CARE}`
  const base = { span: bar.span, bar: bar.number }
  if (hz > CEILING_HZ) {
    const message = `${what}, more than a strumming hand can do: one hand taps up to ${CEILING_HZ} times a second`
    return [{ ...base, code: 'strumming-not-playable', message, help: mend }]
  }
  return [{ ...base, code: 'strumming-fast', message: `${what}; above ${HARD_HZ} few hands can keep up`, help: mend }]
}
