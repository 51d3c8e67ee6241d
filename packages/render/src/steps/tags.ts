import type { Bar, Event } from '@barwise/parser'
import type { Card } from './cards.ts'

/** A technique worth naming beside a card's title. */
export type Tag =
  | 'hammer-on'
  | 'pull-off'
  | 'slide'
  | 'slide-away'
  | 'moved-shape'
  | 'added-finger'
  | 'some-strings'
  | 'rolled'
  | 'palm-muted'
  | 'dead-string'
  | 'let-ring'
  | 'vibrato'
  | 'accent'
  | 'ghosted'
  | 'short'
  | 'tuplet'
  | 'over-the-beat'
  | 'stop'

/** In the order of what a player must know first. */
const ORDER: readonly Tag[] = [
  'hammer-on',
  'pull-off',
  'slide',
  'moved-shape',
  'added-finger',
  'slide-away',
  'tuplet',
  'over-the-beat',
  'palm-muted',
  'rolled',
  'let-ring',
  'some-strings',
  'dead-string',
  'vibrato',
  'accent',
  'ghosted',
  'short',
  'stop',
]

/** The techniques of what a card shows: three at most. */
export function tagsOf(bar: Bar, card: Pick<Card, 'fromTicks' | 'toTicks'>): readonly Tag[] {
  const found = new Set<Tag>()
  const shown = (at: number): boolean => at >= card.fromTicks && at < card.toTicks
  let sounded = false
  for (const event of bar.events) {
    if (shown(event.at)) for (const tag of eventTags(bar, event, sounded)) found.add(tag)
    if (event.kind !== 'rest') sounded = true
  }
  if (bar.groups.some((group) => shown(group.at))) found.add('tuplet')
  return ORDER.filter((tag) => found.has(tag)).slice(0, 3)
}

function eventTags(bar: Bar, event: Event, sounded: boolean): readonly Tag[] {
  const tags: Tag[] = []
  if (event.kind === 'rest') return sounded ? ['stop'] : []
  if (event.palmMuted) tags.push('palm-muted')
  const marks = {
    accent: 'accent',
    ghost: 'ghosted',
    ring: 'let-ring',
    short: 'short',
    'slide-off': 'slide-away',
    vibrato: 'vibrato',
  } as const
  for (const mark of event.marks) tags.push(marks[mark])
  if (event.kind === 'scratch') return tags
  const techniques = { hammer: 'hammer-on', pull: 'pull-off', slide: 'slide' } as const
  if (event.technique !== null) tags.push(techniques[event.technique])
  if (event.rolled) tags.push('rolled')
  if (event.target.shift !== 0) tags.push('moved-shape')
  if (event.target.shape !== null && event.target.added.some(({ fret }) => fret !== null)) tags.push('added-finger')
  if (event.target.only !== null && event.target.shape !== null) tags.push('some-strings')
  if (event.notes.some((note) => note.from === 'dead')) tags.push('dead-string')
  const beatEnd = (Math.floor(event.at / bar.beatTicks) + 1) * bar.beatTicks
  if (event.at % bar.beatTicks !== 0 && event.at + event.duration > beatEnd) tags.push('over-the-beat')
  return tags
}
