import type { FindingDraft } from '../finding/finding-draft.ts'
import { CEILING_HZ, HARD_HZ, handCyclesHz } from '../hand/strum-speed.ts'
import type { Bar, Part } from '../score/part.ts'
import { CARE } from './care.ts'
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
  const goal = tempoBpm !== bar.tempoBpm ? 'the goal of ' : ''
  const rate = `${hz.toFixed(1)} swings a second at ${goal}${tempoBpm}`
  const slower = Math.floor((tempoBpm * HARD_HZ) / hz)
  if (hz > CEILING_HZ) {
    const message = `bar ${bar.number} asks for ${rate}, more than a strumming hand can do`
    return [
      {
        span: bar.span,
        bar: bar.number,
        code: 'strumming-not-playable',
        message,
        help: `bring the tempo down to ${slower}, or write fewer strokes; ${CARE}`,
      },
    ]
  }
  const message = `bar ${bar.number} asks for ${rate}, which few hands can keep up`
  return [
    {
      span: bar.span,
      bar: bar.number,
      code: 'strumming-fast',
      message,
      help: `bring the tempo down to ${slower} if it need not be so fast; ${CARE}`,
    },
  ]
}
