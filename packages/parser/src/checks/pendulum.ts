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
  const drafts: FindingDraft[] = []
  let reported = -1
  strokes.forEach((stroke, at) => {
    if (!isTurned(stroke)) return
    const [first, last] = runAround(strokes, at)
    const long = last > first
    if (long && reported >= first) return
    if (long) reported = at
    drafts.push(long ? runFinding(stroke, last - first + 1) : accentFinding(stroke))
  })
  return drafts
}

/** Whether the writer gave a stroke on the grid the direction that the hand does not have there. */
function isTurned({ bar, event }: HandStroke): boolean {
  const slot = slotTicks(bar.grid)
  if (event.kind === 'rest' || !event.strokeGiven || bar.stroke !== 'alternate') return false
  // What a copy brought in points at its line and was judged where it stands.
  if (event.at % slot !== 0 || event.span.start === bar.span.start) return false
  return event.stroke !== swingAt({ bar, event })
}

function swingAt({ bar, event }: Pick<HandStroke, 'bar' | 'event'>): 'down' | 'up' {
  const offset = bar.firstBeat * bar.beatTicks
  return bar.grid === 4 || ((event.at + offset) / slotTicks(bar.grid)) % 2 === 0 ? 'down' : 'up'
}

/** The first and the last of the strokes around one that follow each other in its direction in less than a swing. */
function runAround(strokes: readonly HandStroke[], at: number): readonly [number, number] {
  let [first, last] = [at, at]
  while (follows(strokes[first - 1], strokes[first])) first--
  while (follows(strokes[last], strokes[last + 1])) last++
  return [first, last]
}

function follows(before: HandStroke | undefined, after: HandStroke | undefined): boolean {
  if (before === undefined || after === undefined) return false
  if (before.event.kind === 'rest' || after.event.kind === 'rest') return false
  return before.event.stroke === after.event.stroke && after.start - before.start < 2 * slotTicks(after.bar.grid)
}

const COUNTS = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight']

function runFinding({ bar, event }: HandStroke, strokes: number): FindingDraft {
  const word = event.kind !== 'rest' && event.stroke === 'down' ? 'downstrokes' : 'upstrokes'
  return {
    span: event.span,
    bar: bar.number,
    code: 'same-direction-run',
    message: `${COUNTS[strokes - 2] ?? strokes} ${word} in a row in bar ${bar.number} leave the hand less than one full swing between them`,
    help: 'leave the direction out here so that the hand goes on swinging, or hold the stroke before for one slot more',
  }
}

function accentFinding({ bar, event }: HandStroke): FindingDraft {
  const stroke = event.kind === 'rest' ? null : event.stroke
  return {
    span: event.span,
    bar: bar.number,
    code: 'against-pendulum',
    message: `this ${stroke}stroke in bar ${bar.number} falls where the hand swings ${swingAt({ bar, event })}`,
    help: 'keep it if it is meant as an accent, else leave the direction out',
  }
}
