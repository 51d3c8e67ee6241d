import type { Bar, Event, Strike, Ticks } from '@barwise/parser'
import { beatAt, type Counted, countName, frameAt, frameSlot, nameIn } from './count-name.ts'
import type { Lasting, Ringing, SlideFrom } from './instruction.ts'

/** Where a struck slide comes from, null when the strike is none. */
export function slideFrom(strike: Strike): SlideFrom | null {
  if (strike.technique !== 'slide') return null
  const slid = strike.notes.filter((note) => note.from === 'slid')
  if (slid.length === 0) return null
  if (slid.length === strike.notes.length) {
    if (slid.every((note) => note.fromFret === null)) return { kind: 'below' }
    const steps = new Set(slid.map((note) => (note.fromFret === null ? null : (note.fret ?? 0) - note.fromFret)))
    const step = [...steps][0]
    if (steps.size === 1 && step !== null && step !== undefined) return { kind: 'frets', frets: step }
  }
  return { kind: 'each', strings: slid.map((note) => ({ string: note.string, fret: note.fromFret })) }
}

/** How long an event goes on past its slot, null when it does not, or is cut short however long its place is. */
export function lasting(bar: Bar, event: Event): Lasting | null {
  if (event.kind !== 'rest' && event.marks.includes('short')) return null
  const end = event.at + event.duration
  if (end > bar.length) return { kind: 'bar-line' }
  if (event.duration <= frameSlot(frameAt(bar, event.at))) return null
  const beatEnd = (Math.floor(event.at / bar.beatTicks) + 1) * bar.beatTicks
  if (end <= beatEnd) return { kind: 'beat' }
  const frame = frameAt(bar, event.at)
  if (frame.length > bar.beatTicks && end <= frame.at + frame.length) {
    return { kind: 'through', to: nameIn(bar, frame, end - 1) }
  }
  const lastBeat = Math.floor((end - 1) / bar.beatTicks)
  const goesInto = end < bar.length && end % bar.beatTicks !== 0
  if (goesInto && lastBeat * bar.beatTicks === beatEnd) return { kind: 'over' }
  const shownEnd = goesInto ? lastBeat * bar.beatTicks : end
  return { kind: 'through', to: lastCount(bar, shownEnd) }
}

/** The last place before a tick, said by its number when the sound fills that beat. */
function lastCount(bar: Counted, end: Ticks): ReturnType<typeof countName> {
  const beat = beatAt(bar, end - 1)
  if (end % bar.beatTicks === 0) return { kind: 'count', beat, name: 'number', late: false }
  return countName(bar, end - 1)
}

/** How far a stroke marked to ring is told to go on, null when it is not marked. */
export function ringing(bar: Bar, event: Strike): Ringing | null {
  const ends = event.notes.flatMap((note) => (note.ringsTo === null ? [] : [note.ringsTo]))
  if (!event.marks.includes('ring')) return null
  if (ends.length === 0) return { kind: 'own' }
  const end = Math.max(...ends)
  const last = bar.events.findLast((one) => one.kind === 'strike')
  if (end > bar.length) return last === event ? { kind: 'bar-line' } : { kind: 'own' }
  const stop = bar.events.find((one) => one.at === end)
  return stop?.kind === 'rest' || stop?.kind === 'scratch'
    ? { kind: 'through', to: countName(bar, end - 1) }
    : { kind: 'own' }
}

/** Whether a stretch of a bar has three strokes at least, all struck and all marked to ring: then that is said once for all. */
export function everyStrokeRings(
  bar: Bar,
  { fromTicks, toTicks }: { readonly fromTicks: Ticks; readonly toTicks: Ticks },
): boolean {
  const shown = bar.events.filter((event) => event.at >= fromTicks && event.at < toTicks)
  const strikes = shown.flatMap((event) => (event.kind === 'strike' ? [event] : []))
  return strikes.length > 2 && strikes.every((strike) => strike.stroke !== null && strike.marks.includes('ring'))
}
