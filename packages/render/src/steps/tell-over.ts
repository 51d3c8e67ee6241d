import type { Ticks } from '@barwise/parser'
import { heldInto } from './bar-compare.ts'
import { countName } from './count-name.ts'
import { shapeOf } from './hand.ts'
import type { Instruction } from './instruction.ts'
import type { State, Telling } from './telling.ts'

/** What goes on over the start of a beat, or null when something begins there. */
export function tellOver(telling: Telling, state: State, at: Ticks, until: Ticks): Instruction | null {
  const { bar, part, memory } = telling
  const first = bar.events.find((event) => event.at >= at)
  if (first !== undefined && first.at === at) return null
  const end = Math.min(first?.at ?? bar.length, until, bar.length)
  const held = state.previous === null ? heldInto(part, bar) : null
  const event = state.previous ?? held?.event ?? null
  if (event === null) return null
  const named = event.kind === 'strike' && event.stroke !== null ? shapeOf(event, memory) : undefined
  const plainly =
    event.kind === 'strike' && event.target.only === null && event.target.shift === 0 && event.target.added.length === 0
  const last = countName(bar, Math.max(at, end - 1))
  const number = { kind: 'count', beat: last.beat, name: 'number', late: false } as const
  // A sound from before that fills its last beat goes on through the beat.
  const to = held !== null && end % bar.beatTicks === 0 ? number : last
  return {
    kind: 'over',
    fromTicks: at,
    toTicks: end,
    sound: event.kind,
    name: named !== undefined && plainly && held === null ? named.name : null,
    // The parts of a cut are not counted before it is announced: then the beat's number stands for what goes on.
    to: to.kind === 'count' ? to : number,
    fromBarBefore: held !== null,
    swings: bar.stroke === 'alternate',
    wholeBar: first === undefined && at === 0,
  }
}
