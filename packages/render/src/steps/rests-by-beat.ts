import type { Bar, Event, Part } from '@barwise/parser'

/**
 * A part in which a silence that begins inside a beat ends with it, and another begins with the next beat: so beats that are alike
 * have the same events, whatever was silent before them. A silence from a beat's start on, a cut and a pickup stay as they are.
 */
export function restsByBeat(part: Part): Part {
  return { ...part, bars: part.bars.map((bar) => (bar.number === 0 ? bar : { ...bar, events: cutRests(bar) })) }
}

function cutRests(bar: Bar): readonly Event[] {
  return bar.events.flatMap((event): readonly Event[] => {
    const beat = Math.ceil(event.at / bar.beatTicks) * bar.beatTicks
    const end = event.at + event.duration
    const inCut = bar.groups.some((group) => group.at < beat && group.at + group.length > beat)
    if (event.kind !== 'rest' || beat === event.at || end <= beat || inCut) return [event]
    return [
      { ...event, duration: beat - event.at },
      { ...event, at: beat, duration: end - beat },
    ]
  })
}
