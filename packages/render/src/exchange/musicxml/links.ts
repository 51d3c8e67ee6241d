import type { NoteStart, Part } from '@barwise/parser'
import type { WrittenBar, WrittenSound } from './written-part.ts'

/** What joins a note to the next on its string. */
export type LinkKind = 'tie' | 'hammer-on' | 'pull-off' | 'slide'

/** Two notes of one string that belong together. */
export interface Link {
  readonly kind: LinkKind
  readonly string: number
  /** Null for a tie into a later ending: it comes from before the first. */
  readonly from: WrittenSound | null
  readonly to: WrittenSound
}

const MOVES: Readonly<Partial<Record<NoteStart, LinkKind>>> = {
  hammered: 'hammer-on',
  pulled: 'pull-off',
  slid: 'slide',
}

/**
 * Every tie, hammer-on, pull-off and slide of a part, string by string in printed order. What begins a later ending goes on from the bar
 * before the first. A slide from nowhere in particular has no other end and is no link.
 */
export function linksOf(bars: readonly WrittenBar[], part: Part): readonly Link[] {
  const links: Link[] = []
  let last = new Map<number, WrittenSound>()
  const beforeEndings = new Map<object, Map<number, WrittenSound>>()
  for (const { bar, sounds } of bars) {
    const repeat = part.repeats.find(({ endings }) => endings.some(({ from }) => from === bar.number))
    const first = repeat?.endings[0]?.from === bar.number
    const later = repeat !== undefined && !first
    if (repeat !== undefined && first) beforeEndings.set(repeat, new Map(last))
    if (later) last = new Map(beforeEndings.get(repeat) ?? [])
    for (const sound of sounds) {
      links.push(...linksInto(sound, last, later && sound.index === 0))
      for (const { string } of sound.strings) last.set(string, sound)
    }
  }
  return links
}

function linksInto(sound: WrittenSound, last: ReadonlyMap<number, WrittenSound>, entersEnding: boolean): Link[] {
  const { at, event, eventAt } = sound.written
  return sound.strings.flatMap(({ string, note }): Link[] => {
    const from = last.get(string)
    if (at > eventAt) return from?.written.event === event ? [{ kind: 'tie', string, from, to: sound }] : []
    if (note?.from === 'held') {
      if (entersEnding) return [{ kind: 'tie', string, from: null, to: sound }]
      return from === undefined ? [] : [{ kind: 'tie', string, from, to: sound }]
    }
    const kind = note === null ? undefined : MOVES[note.from]
    if (kind === undefined || note?.fromFret == null || from === undefined) return []
    return [{ kind, string, from, to: sound }]
  })
}
