import type { Bar, Event, Part } from '@barwise/parser'
import { type Hand, type ShapeMemory, target } from './hand.ts'

/** What is told of a bar, or of another way to play a stretch of it. */
export interface Telling {
  readonly part: Part
  readonly bar: Bar
  readonly memory: ShapeMemory
  /** Whether everything rings, said once above. */
  readonly everyRing: boolean
  /** The cut that every beat told has, announced once above: null when there is none. */
  readonly everyBeatIn: number | null
}

/** Where the telling stands. */
export interface State {
  hand: Hand
  previous: Event | null
  /** Whether an alternative is being told. */
  readonly aside: boolean
  /** Cuts announced. */
  readonly announced: Set<string>
  /** Whether easing was told: after that only a sound that lasted is told to be eased. */
  eased: boolean
}

/** Takes note of an event that is not told. */
export function pass(telling: Telling, state: State, event: Event): void {
  state.previous = event
  if (event.kind !== 'strike') return
  const named = target(event, state.hand, telling.memory)
  state.hand = { ...named.hand, told: false }
}
