import type { PlayBar, PlayPart } from './play-data.ts'

/** Something that happens at a time of a part, in milliseconds at its own tempo. */
export type Cue =
  | { readonly kind: 'stroke'; readonly atMs: number; readonly sound: number }
  | {
      readonly kind: 'beat'
      readonly atMs: number
      /** Whether it is the first of its bar, and what is counted, from 1. */
      readonly first: boolean
      readonly beat: number
      /** Whether it is counted before the music begins. */
      readonly leadIn: boolean
    }
  | {
      readonly kind: 'event'
      readonly atMs: number
      readonly bar: number
      readonly bpm: number
      /** Ticks from the start of the bar as written. */
      readonly atTicks: number
      /** The moment that is told: where the event is written, or a beat that it goes on over. */
      readonly toldTicks: number
      readonly count: string
    }

/** All that happens in a part, in order of time; at one time events come before strokes, and these before beats. */
export function cuesOf({ bars, events, strokes }: PlayPart): readonly Cue[] {
  const lit = bars.flatMap(([bar, startMs, , , bpm]) =>
    (events[bar] ?? []).map(([atTicks, offsetMs, count, overTicks]): Cue => {
      const toldTicks = overTicks ?? atTicks
      return { kind: 'event', atMs: startMs + offsetMs, bar, bpm, atTicks, toldTicks, count }
    }),
  )
  const heard = strokes.map(([atMs, sound]): Cue => ({ kind: 'stroke', atMs, sound }))
  return [...lit, ...heard, ...bars.flatMap(beatsOf)].sort((a, b) => a.atMs - b.atMs)
}

function beatsOf([, startMs, lengthMs, beatMs, , , missing]: PlayBar): readonly Cue[] {
  // A beat that begins within a millisecond of the end belongs to the next bar.
  const count = Math.ceil((lengthMs - 1) / beatMs)
  return Array.from({ length: count }, (_, i): Cue => {
    const beat = missing + i + 1
    return { kind: 'beat', atMs: startMs + i * beatMs, first: beat === 1, beat, leadIn: false }
  })
}

/** The beats of the bar counted before a bar, and before a pickup those that are missing of its own; the last ends where the bar begins. */
export function leadInTo([, startMs, , beatMs, , beats, missing]: PlayBar): readonly Cue[] {
  const all = beats + missing
  return Array.from({ length: all }, (_, i): Cue => {
    const beat = (i % beats) + 1
    return { kind: 'beat', atMs: startMs - (all - i) * beatMs, first: beat === 1, beat, leadIn: true }
  })
}
