import { type AnyEvent, write } from 'midifile-ts'

/** A meta event at its time. Texts are plain. Source: Standard MIDI Files 1.0, meta events. */
export type MetaEvent = { readonly at: number } & (
  | { readonly kind: 'text'; readonly name: 'trackName' | 'copyrightNotice' | 'marker'; readonly text: string }
  | { readonly kind: 'tempo'; readonly microsecondsPerQuarter: number }
  | { readonly kind: 'time'; readonly count: number; readonly unit: number; readonly clocksPerBeat: number }
  | { readonly kind: 'key'; readonly fifths: number; readonly minor: boolean }
)

/** What a channel plays, at its time. */
export type ChannelEvent = { readonly at: number } & (
  | { readonly kind: 'program'; readonly program: number }
  | { readonly kind: 'on'; readonly midi: number; readonly velocity: number }
  | { readonly kind: 'off'; readonly midi: number }
)

/** A track: its events in order of time, and where it ends. All of it on channel 1. */
export interface MidiTrack {
  readonly events: readonly (MetaEvent | ChannelEvent)[]
  readonly end: number
}

/**
 * A Standard MIDI File of format 1. The one place that knows midifile-ts 1.5.2, and what is odd about it: it writes the low byte of each sign
 * of a text, so texts are turned into UTF-8 here; it writes the length of a text as one byte, so that texts end at 127 bytes; ends
 * of tracks are the caller's to write; numbers are cut to a byte without a word, which gives flats their two's complement.
 */
export function midiFile(tracks: readonly MidiTrack[], ticksPerQuarter: number): Uint8Array {
  return write(
    tracks.map(({ events, end }) => {
      let now = 0
      const since = (at: number): number => {
        const delta = at - now
        now = at
        return delta
      }
      const written = events.map((event): AnyEvent => eventOf(event, since(event.at)))
      return [...written, { type: 'meta', subtype: 'endOfTrack', deltaTime: since(end) }]
    }),
    ticksPerQuarter,
  )
}

function eventOf(event: MetaEvent | ChannelEvent, deltaTime: number): AnyEvent {
  switch (event.kind) {
    case 'text':
      return { type: 'meta', subtype: event.name, deltaTime, text: byteText(event.text) }
    case 'tempo':
      return { type: 'meta', subtype: 'setTempo', deltaTime, microsecondsPerBeat: event.microsecondsPerQuarter }
    case 'time':
      return {
        type: 'meta',
        subtype: 'timeSignature',
        deltaTime,
        numerator: event.count,
        denominator: event.unit,
        metronome: event.clocksPerBeat,
        thirtyseconds: 8,
      }
    case 'key':
      return { type: 'meta', subtype: 'keySignature', deltaTime, key: event.fifths, scale: event.minor ? 1 : 0 }
    case 'program':
      return { type: 'channel', subtype: 'programChange', deltaTime, channel: 0, value: event.program }
    case 'on':
      return {
        type: 'channel',
        subtype: 'noteOn',
        deltaTime,
        channel: 0,
        noteNumber: event.midi,
        velocity: event.velocity,
      }
    case 'off':
      return { type: 'channel', subtype: 'noteOff', deltaTime, channel: 0, noteNumber: event.midi, velocity: 64 }
  }
}

/** A text as signs of one UTF-8 byte each, no longer than 127, whole signs only. */
function byteText(text: string): string {
  let bytes = ''
  for (const sign of text.replace(/\p{Surrogate}/gu, '')) {
    const next = encodeURIComponent(sign).replace(/%([0-9A-F]{2})/g, (_, hex) => String.fromCharCode(parseInt(hex, 16)))
    if (bytes.length + next.length > 127) break
    bytes += next
  }
  return bytes
}
