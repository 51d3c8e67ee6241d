import type { Decoded, Frets } from './decoded.ts'
import { movedFrets, onlyStrings } from './presses.ts'
import { toList } from './spoken-numbers.ts'

/** How a card is told by another bar. */
export interface AsBar {
  readonly bar: number
  /** For each shape of the other bar the one played in its place. */
  readonly exchanged: ReadonlyMap<string, string>
  /** Beats that the card tells itself, in order. */
  readonly told: readonly number[]
}

/** Reads "As bar 1 to the end of beat 2, with D5 for A5, then:"; null when the line is none. `beats` is the last beat of the bar. */
export function readAsBar(line: string, beats: number): AsBar | null {
  const match = line.match(
    /^As bar (\d+)(?: to the end of beat (\d+))?(?:, with (.+?))?(?:\.|, then:|, but beats? ([^:]+):)$/,
  )
  if (match === null) return null
  const pairs = (match[3] ?? '').split(/, | and /).filter((pair) => pair !== '')
  const exchanged = pairs.map((pair) => {
    const [shape, other] = pair.split(' for ')
    return [other!, shape!] as const
  })
  const from = match[2] === undefined ? beats + 1 : Number(match[2]) + 1
  const told = match[4] === undefined ? Array.from({ length: beats + 1 - from }, (_, i) => from + i) : toList(match[4])
  return { bar: Number(match[1]), exchanged: new Map(exchanged), told }
}

/** An event with its shape exchanged, on the strings that were struck; throws where the other shape cannot be struck so. */
export function exchange(
  event: Decoded,
  exchanged: ReadonlyMap<string, string>,
  shapes: ReadonlyMap<string, Frets>,
): Decoded {
  const shape = event.grip === null ? undefined : exchanged.get(event.grip.shape)
  if (shape === undefined || event.grip === null) return event
  const { shift, only } = event.grip
  const whole = movedFrets(shapes.get(shape)!, shift)
  const frets = only === null ? whole : onlyStrings(whole, only)
  if (only !== null && frets.size !== only.length) throw new Error(`${shape} does not sound all of strings ${only}`)
  if (event.notes.some((note) => note.from !== 'struck')) throw new Error(`${shape} cannot be hammered by its name`)
  const notes = [...frets].map(([string, fret]) => ({ string, fret, from: 'struck', fromFret: null }))
  return { ...event, grip: { shape, shift, only }, notes: notes.sort((a, b) => b.string - a.string) }
}
