import type { Finger, Note, Shape, Strike } from '@barwise/parser'
import type { Press } from './instruction.ts'

/** A fret and its finger on one string. */
export interface Held {
  readonly string: number
  readonly fret: number | null
  readonly finger: Finger | null
}

/** The strings of a shape that sound, highest string number first. */
export function shapeHeld(shape: Shape): readonly Held[] {
  const held: Held[] = []
  for (let i = shape.frets.length - 1; i >= 0; i--) {
    const fret = shape.frets[i]
    if (fret === null || fret === undefined) continue
    held.push({ string: i + 1, fret, finger: shape.fingers[i] ?? null })
  }
  return held
}

/** The notes of a strike by string. */
export function notesHeld(notes: readonly Note[]): readonly Held[] {
  return notes.map((note) => ({ string: note.string, fret: note.fret, finger: note.finger }))
}

/** What a shape target sounds when it is struck: strings and frets, moved, chosen and added to; null when no such shape is known. */
export function targetFrets(strike: Strike, shape: Shape | undefined): ReadonlyMap<number, number | null> | null {
  if (shape === undefined) return null
  const { shift, only, added } = strike.target
  const frets = new Map<number, number | null>()
  for (const { string, fret } of shapeHeld(shape)) {
    if (fret === null || (only !== null && !only.includes(string))) continue
    frets.set(string, fret === 0 ? 0 : fret + shift)
  }
  for (const { string, fret } of added) frets.set(string, fret)
  return frets
}

/**
 * Strings gathered by finger and fret: fingers lying flat first (lowest fret first), then the others, lowest-sounding string
 * first. A finger is flat over a whole range only where every string between sounds at its fret or above.
 */
export function pressesOf(held: readonly Held[]): readonly Press[] {
  const presses: Press[] = []
  const taken = new Set<number>()
  for (const one of held) {
    if (taken.has(one.string)) continue
    const together = held.filter(
      (other) => other.fret === one.fret && other.finger === one.finger && !taken.has(other.string),
    )
    for (const other of together) taken.add(other.string)
    const strings = together.map((other) => other.string)
    presses.push({ finger: one.finger, fret: one.fret, strings, flat: liesFlat(one, strings, held) })
  }
  const flat = presses.filter((press) => press.flat).sort((a, b) => (a.fret ?? 0) - (b.fret ?? 0))
  return [...flat, ...presses.filter((press) => !press.flat)]
}

function liesFlat(one: Held, strings: readonly number[], held: readonly Held[]): boolean {
  const high = strings[0]
  const low = strings.at(-1)
  if (one.finger === null || one.fret === null || one.fret === 0 || high === undefined || low === undefined)
    return false
  if (high === low) return false
  const fret = one.fret
  for (let string = low; string <= high; string++) {
    const there = held.find((other) => other.string === string)
    if (there === undefined || there.fret === null || there.fret < fret) return false
  }
  return true
}

/** The lowest pressed fret, null when nothing is pressed. */
export function lowestFret(held: readonly Held[]): number | null {
  const pressed = held.flatMap(({ fret }) => (fret === null || fret === 0 ? [] : [fret]))
  return pressed.length === 0 ? null : Math.min(...pressed)
}
