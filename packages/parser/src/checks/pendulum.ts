import type { FindingDraft } from '../finding/finding-draft.ts'
import { handStrokes } from '../hand/strum-speed.ts'
import { barStart } from '../score/bar-start.ts'
import type { Event } from '../score/event.ts'
import type { Bar, Part } from '../score/part.ts'
import { slotTicks, type Ticks } from '../score/time.ts'
import { barWord } from './hand-words.ts'
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
  /** Ticks from the start of bar 1. */
  readonly start: Ticks
}

function turnedStrokes(part: Part): readonly FindingDraft[] {
  const strokes = part.bars.flatMap((bar) =>
    handStrokes(bar).map((event): HandStroke => ({ bar, event, start: barStart(bar) + event.at })),
  )
  return runsOf(strokes).flatMap((run): readonly FindingDraft[] => {
    const turned = run.find(isTurned)
    if (turned === undefined) return []
    return [run.length > 1 ? runFinding(turned, run.length) : accentFinding(turned)]
  })
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

/** The strokes cut into runs that follow each other in one direction in less than a swing; most are of one stroke. */
function runsOf(strokes: readonly HandStroke[]): readonly (readonly HandStroke[])[] {
  const runs: HandStroke[][] = []
  for (const stroke of strokes) {
    const last = runs.at(-1)
    if (last !== undefined && follows(last.at(-1), stroke)) last.push(stroke)
    else runs.push([stroke])
  }
  return runs
}

function follows(before: HandStroke | undefined, after: HandStroke): boolean {
  if (before === undefined) return false
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
    message: `${COUNTS[strokes - 2] ?? strokes} ${word} in a row in ${barWord(bar)} leave the hand less than one full swing between them`,
    help: 'leave the direction out here so that the hand goes on swinging, or hold the stroke before for one slot more',
  }
}

function accentFinding({ bar, event }: HandStroke): FindingDraft {
  const stroke = event.kind === 'rest' ? null : event.stroke
  return {
    span: event.span,
    bar: bar.number,
    code: 'against-pendulum',
    message: `this ${stroke}stroke in ${barWord(bar)} falls where the hand swings ${swingAt({ bar, event })}`,
    help: 'keep it if it is meant as an accent, else leave the direction out',
  }
}
