import type { FindingDraft } from '../finding/finding-draft.ts'
import { handStrokes } from '../hand/strum-speed.ts'
import type { Event } from '../score/event.ts'
import type { Bar, Part } from '../score/part.ts'
import { slotTicks, type Ticks } from '../score/time.ts'
import type { Rule } from './rule.ts'

/**
 * The pendulum: only strokes that the writer turned round are judged, never what was derived, and in a copy only what was written
 * for it. Neighbours count over bar lines.
 */
export const pendulum: Rule = {
  codes: ['against-pendulum', 'same-direction-run'],
  check: ({ lesson }) => lesson.parts.flatMap(turnedStrokes),
}

interface HandStroke {
  readonly bar: Bar
  readonly event: Event
  /** Ticks from the start of the part, the pickup included. */
  readonly start: Ticks
}

function turnedStrokes(part: Part): readonly FindingDraft[] {
  const strokes = part.bars.flatMap((bar) =>
    handStrokes(bar).map((event): HandStroke => {
      const barStart = bar.number === 0 ? -bar.length : bar.start
      return { bar, event, start: barStart + event.at }
    }),
  )
  return strokes.flatMap((stroke, at) => judge(stroke, [strokes[at - 1], strokes[at + 1]]))
}

function judge(
  { bar, event, start }: HandStroke,
  neighbours: readonly (HandStroke | undefined)[],
): readonly FindingDraft[] {
  const slot = slotTicks(bar.grid)
  if (event.kind === 'rest' || !event.strokeGiven || bar.stroke !== 'alternate') return []
  if (event.at % slot !== 0 || event.span.start === bar.span.start) return []
  const offset = bar.firstBeat * bar.beatTicks
  const own = bar.grid === 4 || ((event.at + offset) / slot) % 2 === 0 ? 'down' : 'up'
  if (event.stroke === own) return []
  const base = { span: event.span, bar: bar.number }
  const near = neighbours.some(
    (other) =>
      other !== undefined &&
      other.event.kind !== 'rest' &&
      other.event.stroke === event.stroke &&
      Math.abs(other.start - start) < 2 * slot,
  )
  if (near) {
    const word = event.stroke === 'down' ? 'downstrokes' : 'upstrokes'
    return [
      {
        ...base,
        code: 'same-direction-run',
        message: `two ${word} in a row in bar ${bar.number} leave the hand less than one full swing between them`,
        help: 'leave the direction out here so that the hand goes on swinging, or hold the stroke before for one slot more',
      },
    ]
  }
  return [
    {
      ...base,
      code: 'against-pendulum',
      message: `this ${event.stroke}stroke in bar ${bar.number} falls where the hand swings ${own}`,
      help: 'keep it if it is meant as an accent, else leave the direction out',
    },
  ]
}
