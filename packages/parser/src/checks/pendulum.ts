import type { FindingDraft } from '../finding/finding-draft.ts'
import { handStrokes } from '../hand/strum-speed.ts'
import type { Bar } from '../score/part.ts'
import { slotTicks } from '../score/time.ts'
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
