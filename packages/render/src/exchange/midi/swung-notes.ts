import { swungAt, type Ticks } from '@barwise/parser'
import type { PlayedBar } from './played-bars.ts'
import type { PlayedNote } from './played-notes.ts'

/** The notes under the feel of the bars they begin and end in. */
export function swungNotes(notes: readonly PlayedNote[], played: readonly PlayedBar[]): readonly PlayedNote[] {
  const places = played.map(({ bar, start }) => ({ start, at: swungAt(bar) }))
  const move = (at: Ticks): Ticks => {
    const place = places[placeAt(played, at)]
    return place === undefined ? at : place.start + place.at(at - place.start)
  }
  return notes.map((note) => ({ ...note, from: move(note.from), to: move(note.to) }))
}

/** The place, among bars in the order of playing, of the one that a moment falls into: the first before the start, the last after the end. */
export function placeAt(played: readonly PlayedBar[], at: Ticks): number {
  let [low, high] = [0, played.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((played[middle]?.start ?? 0) <= at) low = middle
    else high = middle - 1
  }
  return low
}
