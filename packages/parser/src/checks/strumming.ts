import type { FindingDraft } from '../finding/finding-draft.ts'
import { CEILING_HZ, coarsestGrid, HARD_HZ, handCyclesHz, handStrokes } from '../hand/strum-speed.ts'
import type { Bar, Part } from '../score/part.ts'
import { slotTicks } from '../score/time.ts'
import { CARE } from './reach.ts'
import type { Rule } from './rule.ts'

/** The pendulum: only strokes that the writer turned round are judged, never what was derived. */
export const pendulum: Rule = {
  codes: ['against-pendulum', 'same-direction-run'],
  check: ({ lesson }) => lesson.parts.flatMap((part) => part.bars.flatMap(turnedStrokes)),
}

function turnedStrokes(bar: Bar): readonly FindingDraft[] {
  if (bar.stroke !== 'alternate' || bar.copyOf !== null) return []
  const slot = slotTicks(bar.grid)
  const offset = bar.firstBeat * bar.beatTicks
  const drafts: FindingDraft[] = []
  const strokes = handStrokes(bar)
  strokes.forEach((event, at) => {
    if (event.kind === 'rest' || !event.strokeGiven || event.at % slot !== 0) return
    const own = bar.grid === 4 || ((event.at + offset) / slot) % 2 === 0 ? 'down' : 'up'
    if (event.stroke === own) return
    const near = [strokes[at - 1], strokes[at + 1]].find(
      (other) =>
        other !== undefined &&
        other.kind !== 'rest' &&
        other.stroke === event.stroke &&
        Math.abs(other.at - event.at) < 2 * slot,
    )
    const word = event.stroke === 'down' ? 'downstrokes' : 'upstrokes'
    if (near !== undefined) {
      drafts.push({
        span: event.span,
        code: 'same-direction-run',
        message: `two ${word} in a row leave the hand less than one full swing between them`,
        help: `leave the direction out here so that the hand goes on swinging, or hold the stroke before for one slot more`,
      })
      return
    }
    drafts.push({
      span: event.span,
      code: 'against-pendulum',
      message: `this ${event.stroke}stroke falls where the hand swings ${own}`,
      help: 'keep it if it is meant as an accent, else leave the direction out',
    })
  })
  return drafts
}

/** How fast the hand has to swing, at the lesson's tempo and at its goal. */
export const strumSpeed: Rule = {
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
      code: 'strumming-fast',
      message,
      help: `bring the tempo down to ${slower} if it need not be so fast; ${CARE}`,
    },
  ]
}

/** A grid finer than anything played makes the hand look busier than it is. */
export const gridFinerThanPlayed: Rule = {
  codes: ['grid-finer-than-played'],
  check: ({ lesson }) =>
    lesson.parts.flatMap((part): readonly FindingDraft[] => {
      const bars = part.bars.filter((bar) => bar.stroke === 'alternate' && handStrokes(bar).length > 0)
      const first = bars[0]
      if (first === undefined || first.grid === 4 || bars.some((bar) => bar.grid !== first.grid)) return []
      const grids = bars.map((bar) => coarsestGrid(bar) ?? bar.grid)
      const needed = Math.max(...grids)
      if (needed >= first.grid) return []
      const words: Readonly<Record<number, string>> = { 4: 'quarters', 8: 'eighths', 16: 'sixteenths' }
      return [
        {
          span: first.span,
          code: 'grid-finer-than-played',
          message: `${part.title} has a grid of ${first.grid} but every stroke falls on ${words[needed]}`,
          help: `write \`grid=${needed}\` if your hand swings in ${words[needed]}`,
        },
      ]
    }),
}
