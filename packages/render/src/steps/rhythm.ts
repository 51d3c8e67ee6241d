import type { Bar, Stroke, Technique, Ticks } from '@barwise/parser'
import type { Card } from './cards.ts'
import { frameAt, frameSlot } from './count-name.ts'

/** One slot of the rhythm to say aloud: what begins there, or that the sound or the silence goes on. */
export interface RhythmSlot {
  readonly at: Ticks
  readonly beatStarts: boolean
  readonly sound:
    | { readonly kind: 'strike'; readonly stroke: Exclude<Stroke, null> }
    | { readonly kind: 'unstruck'; readonly technique: Technique }
    | { readonly kind: 'scratch' }
    | { readonly kind: 'hold' }
    | { readonly kind: 'rest' }
}

/** The slots of what a card shows, one for each cell of the strip, cuts included. */
export function rhythmOf(bar: Bar, card: Pick<Card, 'fromTicks' | 'toTicks'>): readonly RhythmSlot[] {
  const slots: RhythmSlot[] = []
  for (let at = card.fromTicks; at < card.toTicks; at += frameSlot(frameAt(bar, at))) {
    slots.push({ at, beatStarts: at % bar.beatTicks === 0, sound: soundAt(bar, at) })
  }
  return slots
}

function soundAt(bar: Bar, at: Ticks): RhythmSlot['sound'] {
  const event = bar.events.findLast((one) => one.at <= at)
  if (event === undefined) return { kind: 'hold' }
  if (event.kind === 'rest') return { kind: 'rest' }
  if (event.at !== at) return { kind: 'hold' }
  if (event.kind === 'scratch') return { kind: 'scratch' }
  if (event.stroke === null) return { kind: 'unstruck', technique: event.technique ?? 'slide' }
  return { kind: 'strike', stroke: event.stroke }
}
