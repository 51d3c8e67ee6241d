import type { Bar, Event, Strike } from '@barwise/parser'
import { barsBefore } from './bar-compare.ts'
import { frameAt } from './count-name.ts'
import { describe, inPlace, shapeOf, target } from './hand.ts'
import type { Instruction } from './instruction.ts'
import { lasting, ringing, slideFrom } from './lasting.ts'
import { notesHeld, pressesOf } from './press.ts'
import type { State, Telling } from './telling.ts'

/** Where and when a run is told. */
export type Placed = Pick<
  Extract<Instruction, { kind: 'rest' }>,
  'fromTicks' | 'toTicks' | 'place' | 'sayPlace' | 'splits'
>

/** Tells struck events that are alike: the shape first where it is new, then the strokes. */
export function tellStrike(
  telling: Telling,
  state: State,
  run: readonly Event[],
  placed: Placed,
): readonly Instruction[] {
  const { bar, memory } = telling
  const strikes = run.flatMap((event) => (event.kind === 'strike' ? [event] : []))
  const first = strikes[0]
  const last = strikes.at(-1)
  if (first === undefined || last === undefined) return []
  const told: Instruction[] = []
  const shape = shapeOf(first, memory)
  if (shape !== undefined && !memory.described.includes(shape.name)) told.push(describe(shape, memory, placed))
  const previous = state.hand
  if (told.length > 0 && shape !== undefined) state.hand = inPlace(state.hand, shape)
  const { what, hand, fingers } = target(first, state.hand, memory)
  state.hand = hand
  const strokes = strikes.map((strike) => strike.stroke)
  const pressAgain =
    memory.eased &&
    !memory.pressedAgain &&
    state.previous?.kind === 'scratch' &&
    what.kind === 'shape' &&
    what.hand === 'again'
  if (pressAgain) memory.pressedAgain = true
  const crosses = last.at + last.duration > (Math.floor(last.at / bar.beatTicks) + 1) * bar.beatTicks
  const early =
    crosses &&
    last.at % bar.beatTicks !== 0 &&
    frameAt(bar, last.at).length <= bar.beatTicks &&
    hand.shape !== null &&
    previous.shape !== null &&
    hand.shape !== previous.shape
  told.push({
    kind: 'strike',
    ...placed,
    what,
    strokes,
    styled: styled(bar, strokes),
    brushed: bar.stroke === 'pluck' && first.stroke !== 'pluck',
    marks: first.marks,
    palmMuted: first.palmMuted,
    rolled: first.rolled,
    slideFrom: slideFrom(first),
    lasting: telling.everyRing ? null : lasting(bar, last),
    ringing: telling.everyRing ? null : ringing(bar, first),
    early,
    pressAgain,
    fingers,
  })
  return told
}

/** Tells what the fretting hand sounds alone. */
export function tellUnstruck(telling: Telling, state: State, event: Strike, placed: Placed): readonly Instruction[] {
  const { bar, memory } = telling
  const moved = event.notes.filter((note) => note.from !== 'held')
  const last = state.previous ?? lastBefore(telling)
  const before = last?.kind === 'strike' ? last.notes.filter((note) => note.fret !== null) : []
  const stops = before
    .map((note) => note.string)
    .filter((string) => !event.notes.some((note) => note.string === string))
  const steps = new Set(moved.map((note) => (note.fret ?? 0) - (note.fromFret ?? note.fret ?? 0)))
  const step = [...steps][0] ?? 0
  const whole =
    steps.size === 1 &&
    step !== 0 &&
    moved.length === event.notes.length &&
    moved.length === before.length &&
    moved.every((note) => before.some((one) => one.string === note.string)) &&
    moved.length > 1
  state.hand = { ...target(event, state.hand, memory).hand, told: false }
  return [
    {
      kind: 'unstruck',
      ...placed,
      technique: event.technique,
      presses: pressesOf(notesHeld(moved)).map((press) => ({ ...press, flat: false })),
      together: event.technique === 'slide' && whole ? step : null,
      stops,
      marks: event.marks,
      palmMuted: event.palmMuted,
      lasting: lasting(bar, event),
      ringing: ringing(bar, event),
    },
  ]
}

/** The event before a bar's first. */
function lastBefore({ part, bar }: Telling): Event | null {
  return (
    barsBefore(part, bar)
      .find((one) => one.events.length > 0)
      ?.events.at(-1) ?? null
  )
}

/** Whether the way of striking in force says the direction of every stroke by itself. */
export function styled(bar: Bar, strokes: readonly (string | null)[]): boolean {
  if (bar.stroke === 'down') return strokes.every((stroke) => stroke === 'down')
  return bar.stroke === 'pluck' && strokes.every((stroke) => stroke === 'pluck')
}
