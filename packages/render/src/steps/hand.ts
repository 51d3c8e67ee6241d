import type { Shape, Strike } from '@barwise/parser'
import { soundKey } from './bar-compare.ts'
import { leaving, NO_MOVES, takenOver } from './finger-moves.ts'
import type { FingerMoves, Instruction, Press, What } from './instruction.ts'
import { notesHeld, pressesOf, shapeHeld, targetFrets } from './press.ts'

/** What the fretting hand holds while a card is told. */
export interface Hand {
  readonly shape: string | null
  readonly shift: number
  /** Whether exactly the shape is held: nothing added, no strings left out. */
  readonly plain: boolean
  readonly added: readonly Press[]
  /** Frets and strings of the last stroke, as text to compare. */
  readonly frets: string | null
  /** Whether the shape in hand was named here since anything else was told, not by reference to another bar or beat. */
  readonly told: boolean
  /** Shapes that were in hand earlier in this card. */
  readonly before: readonly string[]
}

/** An empty hand, at the start of a card. */
export const EMPTY_HAND: Hand = { shape: null, shift: 0, plain: false, added: [], frets: null, told: false, before: [] }

/** The hand with a shape just described, not yet struck. */
export function inPlace(hand: Hand, shape: Shape): Hand {
  return { shape: shape.name, shift: 0, plain: false, added: [], frets: null, told: true, before: remember(hand) }
}

/** The lesson's shapes by name, and what has been explained in the part. */
export interface ShapeMemory {
  readonly shapes: ReadonlyMap<string, Shape>
  /** Names of the shapes described, in order. */
  readonly described: string[]
  /** Whether it was told what easing is, and that the hand presses again after it. */
  eased: boolean
  pressedAgain: boolean
}

/** The memory at the start of a part. */
export function emptyMemory(shapes: readonly Shape[]): ShapeMemory {
  const byName = new Map(shapes.map((shape) => [shape.name, shape]))
  return { shapes: byName, described: [], eased: false, pressedAgain: false }
}

/** A memory in which everything was explained: what is told by it tells only what is played. */
export function fullMemory(memory: ShapeMemory): ShapeMemory {
  return { shapes: memory.shapes, described: [...memory.shapes.keys()], eased: true, pressedAgain: true }
}

/** How a stroke's target is said, what the hand holds after it, and the fingers that move. */
export interface Targeted {
  readonly what: What
  readonly hand: Hand
  readonly fingers: FingerMoves
}

/** Strings and frets of a strike, as text to compare. */
export function fretsKey(strike: Strike): string {
  return strike.notes.map((note) => `${note.string}:${note.fret ?? 'x'}`).join(' ')
}

/** The shape of a strike when its notes are really those of the shape as targeted; undefined for notes targets. */
export function shapeOf(strike: Strike, memory: ShapeMemory): Shape | undefined {
  if (strike.target.shape === null) return undefined
  const shape = memory.shapes.get(strike.target.shape)
  const frets = targetFrets(strike, shape)
  if (frets === null || frets.size !== strike.notes.length) return undefined
  return strike.notes.every((note) => frets.has(note.string) && frets.get(note.string) === note.fret)
    ? shape
    : undefined
}

/** Names the target of a struck event by what is new about it. */
export function target(strike: Strike, hand: Hand, memory: ShapeMemory): Targeted {
  const frets = fretsKey(strike)
  const shape = shapeOf(strike, memory)
  const presses = pressesOf(notesHeld(strike.notes))
  if (shape === undefined) {
    const what: What = frets === hand.frets ? same(strike) : { kind: 'notes', presses }
    const after = { ...hand, shape: null, shift: 0, plain: false, added: [], frets, told: true, before: remember(hand) }
    return { what, hand: after, fingers: NO_MOVES }
  }
  const { shift, only, added } = strike.target
  const addedPresses = presses
    .map((press) => ({ ...press, strings: press.strings.filter((one) => added.some(({ string }) => string === one)) }))
    .filter((press) => press.strings.length > 0)
    .map((press) => ({ ...press, flat: false }))
  const plain = only === null && added.length === 0
  const held = hand.shape === shape.name && added.length === 0 ? hand.added : []
  const left = plain || held.some(({ strings }) => strings.some((string) => only?.includes(string)))
  const after: Hand = {
    shape: shape.name,
    shift,
    plain,
    added: left ? addedPresses : [...held, ...addedPresses],
    frets,
    told: true,
    before: remember(hand),
  }
  const fingers: FingerMoves = {
    ...(left ? leaving(held, shape) : NO_MOVES),
    taken: frets === hand.frets ? [] : takenOver(strike, shape),
  }
  const what = say()
  if (what.kind === 'notes') return { what, hand: { ...after, shape: null, shift: 0, added: [] }, fingers: NO_MOVES }
  return { what, hand: { ...after, told: what.kind === 'shape' || hand.told }, fingers }

  function say(): What {
    if (frets === hand.frets && (!plain || shift !== 0)) return same(strike)
    const name = shape?.name ?? ''
    if (hand.shape === name && hand.plain) {
      if (plain && shift !== hand.shift && (shift !== 0 || hand.told)) {
        return { kind: 'move', frets: shift - hand.shift, home: shift === 0 }
      }
      if (shift === hand.shift && only === null && added.length > 0) return { kind: 'add', presses: addedPresses }
    }
    if (hand.shape === name && hand.told && shift === hand.shift && only !== null && added.length === 0) {
      return { kind: 'catch', strings: strike.notes.map((note) => note.string) }
    }
    const shown =
      only === null ? null : strike.notes.map((n) => n.string).filter((s) => !added.some((a) => a.string === s))
    if (shown !== null && shown.length === 0) return { kind: 'notes', presses }
    const again = hand.shape === name ? 'again' : hand.before.includes(name) ? 'back' : 'new'
    return { kind: 'shape', name, shift, only: shown, added: addedPresses, hand: again }
  }
}

function same(strike: Strike): What {
  return { kind: 'same', strings: strike.notes.map((note) => note.string) }
}

function remember(hand: Hand): readonly string[] {
  return hand.shape === null || hand.before.includes(hand.shape) ? hand.before : [...hand.before, hand.shape]
}

/** The instruction that describes a shape the first time a part uses it: by its difference from a known one, else in full. */
export function describe(shape: Shape, memory: ShapeMemory, at: { fromTicks: number; toTicks: number }): Instruction {
  const like = memory.described
    .map((name) => memory.shapes.get(name))
    .findLast((known) => known !== undefined && changes(known, shape) !== null)
  memory.described.push(shape.name)
  const changed = like === undefined ? null : changes(like, shape)
  if (like === undefined || changed === null) {
    return { kind: 'describe', ...at, shape, presses: pressesOf(shapeHeld(shape)) }
  }
  const presses = pressesOf(shapeHeld(shape).filter(({ string }) => changed.includes(string)))
  const silent = changed.filter((string) => shape.frets[string - 1] === null)
  return {
    kind: 'describe-like',
    ...at,
    shape,
    like: like.name,
    presses: presses.map((press) => ({ ...press, flat: false })),
    silent,
  }
}

/** The strings on which two shapes differ, when those are one or two, fewer than what stays, and no finger changes elsewhere. */
function changes(from: Shape, to: Shape): readonly number[] | null {
  const changed: number[] = []
  for (let i = to.frets.length - 1; i >= 0; i--) {
    if (from.frets[i] !== to.frets[i]) changed.push(i + 1)
    else if (from.fingers[i] !== to.fingers[i]) return null
  }
  const stays = shapeHeld(to).length - changed.length
  const few = changed.length === 1 ? stays > 0 : changed.length === 2 && stays > 2
  return few ? changed : null
}

/** Whether two events play the same, apart from the direction of the stroke. */
export function playsAlike(a: Strike, b: Strike): boolean {
  return soundKey({ ...a, stroke: null }) === soundKey({ ...b, stroke: null }) && a.target.shape === b.target.shape
}
