import type { Event, Note, Part } from '@barwise/parser'

/** A sound of one string as the score means it: a held note is one sound. Times in ticks from the first bar of the part, pickup included. */
export interface ScoreSound {
  readonly string: number
  /** Null for a cross. */
  readonly fret: number | null
  readonly midi: number | null
  readonly from: number
  to: number
  /** The end of its ringing; 0 when it does not ring past its events. */
  rings: number
  /** Goes on from before the first ending. */
  readonly into: boolean
  readonly note: Note | null
  readonly event: Event
}

/** The start of each bar as printed, pickup included, and the end of the last. */
export function printedStarts({ bars }: Part): readonly number[] {
  const starts = [0]
  for (const { length } of bars) starts.push(starts.at(-1)! + length)
  return starts
}

/** Every sound of a part in printed order, worked out from its events alone. */
export function scoreSounds(part: Part): readonly ScoreSound[] {
  const starts = printedStarts(part)
  const later = new Set(part.repeats.flatMap(({ endings }) => endings.slice(1).map(({ from }) => from)))
  const sounds: ScoreSound[] = []
  const open = new Map<number, ScoreSound>()
  part.bars.forEach((bar, index) => {
    for (const event of bar.events) {
      const from = starts[index]! + event.at
      const to = from + event.duration
      const ringsOf = (note: Note | null) => (note?.ringsTo == null ? 0 : starts[index]! + note.ringsTo)
      const add = (string: number, note: Note | null, into: boolean) => {
        const { fret, midi } = note ?? { fret: null, midi: null }
        const sound = { string, fret, midi, from, to, rings: ringsOf(note), into, note, event }
        sounds.push(sound)
        open.set(string, sound)
      }
      if (event.kind === 'scratch') for (const string of event.shownOn) add(string, null, false)
      if (event.kind !== 'strike') continue
      for (const note of event.notes) {
        const before = open.get(note.string)
        const into = note.from === 'held' && later.has(bar.number) && event.at === 0
        if (note.from !== 'held' || into) add(note.string, note, into)
        else if (before?.to === from && before.fret === note.fret) {
          before.to = to
          before.rings = Math.max(before.rings, ringsOf(note))
        } else throw new Error(`bar ${bar.number}: a held note that nothing sounds before`)
      }
    }
  })
  return sounds
}
