import type { PlayedBar } from './play-bars.ts'
import type { EventMaking } from './sounding.ts'

/**
 * For each bar the number of the first earlier one (never the pickup) that sounds the same, null when there is none: same
 * time, groups and events, and the same notes held into it. Each bar is put into words once and looked up: linear in the bars.
 */
export function sameBars(bars: readonly PlayedBar[]): readonly (number | null)[] {
  const first = new Map<string, number>()
  return bars.map((bar) => {
    if (bar.draft.number === 0) return null
    const words = wordsFor(bar)
    const same = first.get(words)
    if (same === undefined) first.set(words, bar.draft.number)
    return same ?? null
  })
}

function wordsFor(bar: PlayedBar): string {
  const { count, unit } = bar.draft.settings.metre
  const groups = bar.groups.map((group) => `${group.at}+${group.length}/${group.parts}`).join(' ')
  return `${count}/${unit}|${groups}|${bar.heldIn ?? ''}|${bar.events.map(eventWords).join('|')}`
}

function eventWords(event: EventMaking): string {
  const time = `${event.at}+${event.duration}`
  switch (event.kind) {
    case 'rest':
      return `${time} rest`
    case 'scratch':
      return `${time} x ${event.stroke} ${event.strings ?? ''} ${event.marks} ${event.palmMuted}`
    case 'strike': {
      let notes = ''
      for (const note of event.notes) notes += `${note.string}:${note.fret}${note.from},`
      return `${time} ${event.stroke} ${notes} ${event.marks} ${event.palmMuted} ${event.rolled}`
    }
  }
}
