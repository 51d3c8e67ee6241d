import type { Event } from '@barwise/parser'
import { type Frame, frameSlot } from './count-name.ts'
import type { ShapeMemory } from './hand.ts'
import type { Silencing } from './instruction.ts'
import { lowestFret, notesHeld } from './press.ts'
import type { State } from './telling.ts'

/** How the hand silences what sounds just before, if anything does: a short stroke has been let go already. */
export function silencing(previous: Event | null): Silencing {
  if (previous?.kind !== 'strike') return null
  if (previous.marks.some((mark) => mark === 'slide-off' || mark === 'short')) return null
  return previous.notes.some((note) => note.fret === 0) ? 'flat' : 'ease'
}

/** The same before a scratch: told the first time in a card, and again after a sound that lasted. */
export function easing(state: State, frame: Frame): Silencing {
  const how = silencing(state.previous)
  const lasted = state.previous !== null && state.previous.duration > frameSlot(frame)
  const told = how !== null && (!state.eased || lasted)
  if (told) state.eased = true
  return told ? how : null
}

/** The fret that the hand travels to during scratches: only when the next stroke lies two frets or more away. */
export function travel(state: State, next: Event | null, memory: ShapeMemory): number | null {
  if (next?.kind !== 'strike' || next.stroke === null) return null
  if (state.hand.shape === null || next.target.shape === null || next.target.shape === state.hand.shape) return null
  const shape = memory.shapes.get(state.hand.shape)
  const here =
    shape === undefined
      ? null
      : lowestFret(shape.frets.flatMap((fret, i) => (fret === null ? [] : [{ string: i + 1, fret, finger: null }])))
  const there = lowestFret(notesHeld(next.notes))
  return here !== null && there !== null && Math.abs(here - there) >= 2 ? there : null
}
