import { type Lesson, type Part, TICKS_PER_QUARTER } from '@barwise/parser'
import { soundingFifths } from '../page/document/sounding-key.ts'
import { instrumentSound } from './instrument-sound.ts'
import { keyStroke, onOneKeyboard } from './midi/key-strokes.ts'
import { type ChannelEvent, type MetaEvent, midiFile } from './midi/midi-door.ts'
import { type PlayedBar, playedBars } from './midi/played-bars.ts'
import { type PlayedNote, playedNotes } from './midi/played-notes.ts'
import { swungNotes } from './midi/swung-notes.ts'

/**
 * A part as a Standard MIDI File, format 1, in ticks of the score (3,360 to a quarter): a track of tempo, time, key and section names, and one
 * of notes at sounding pitch. Repeats are played out, swing is swung, held and ringing notes last as long as they sound. All strings
 * of a stroke begin together, a roll too: when they are reached is the player's touch and is not written. Scratches and dead strings
 * are short soft notes of the open string.
 *
 * @example partMidi(lesson, lesson.parts[0]).subarray(0, 4) // the bytes of "MThd"
 */
export function partMidi(lesson: Lesson, part: Part): Uint8Array {
  const played = playedBars(part)
  const last = played.at(-1)
  const end = last === undefined ? 0 : last.start + last.bar.length
  const notes = swungNotes(playedNotes(lesson, part, played), played)
  return midiFile(
    [
      { events: settingEvents(lesson, played), end },
      { events: noteEvents(lesson, part, notes), end },
    ],
    TICKS_PER_QUARTER,
  )
}

/** Titles, and what each bar sets where it differs from the bar played before it. */
function settingEvents({ settings, instrument }: Lesson, played: readonly PlayedBar[]): readonly MetaEvent[] {
  const events: MetaEvent[] = [{ kind: 'text', name: 'trackName', text: settings.title, at: 0 }]
  if (settings.licence !== null) events.push({ kind: 'text', name: 'copyrightNotice', text: settings.licence, at: 0 })
  let said = { time: '', key: '', tempo: '' }
  for (const { bar, start } of played) {
    const now: { readonly time: MetaEvent; readonly key: MetaEvent; readonly tempo: MetaEvent } = {
      time: timeOf(bar, start),
      key: {
        kind: 'key',
        fifths: soundingFifths(bar.key, instrument.capo),
        minor: bar.key.mode === 'minor',
        at: start,
      },
      tempo: {
        kind: 'tempo',
        microsecondsPerQuarter: Math.round((60e6 * TICKS_PER_QUARTER) / (bar.tempoBpm * bar.beatTicks)),
        at: start,
      },
    }
    const saying = { time: saidOf(now.time), key: saidOf(now.key), tempo: saidOf(now.tempo) }
    for (const name of ['tempo', 'time', 'key'] as const) if (saying[name] !== said[name]) events.push(now[name])
    said = saying
    if (bar.section !== null) events.push({ kind: 'text', name: 'marker', text: bar.section, at: start })
  }
  return events
}

function saidOf(event: MetaEvent): string {
  return JSON.stringify({ ...event, at: 0 })
}

/** The time signature that fills a bar: a pickup has as many units as it lasts, so that the bars after it fall on their lines. */
function timeOf({ metre, length, beatTicks }: PlayedBar['bar'], at: number): MetaEvent {
  const unitTicks = (4 * TICKS_PER_QUARTER) / metre.unit
  const clocksPerBeat = (24 * beatTicks) / TICKS_PER_QUARTER
  return { kind: 'time', count: length / unitTicks, unit: metre.unit, clocksPerBeat, at }
}

function noteEvents(
  { instrument }: Lesson,
  part: Part,
  notes: readonly PlayedNote[],
): readonly (MetaEvent | ChannelEvent)[] {
  const events: ChannelEvent[] = onOneKeyboard(notes.map(keyStroke)).flatMap(({ midi, from, to, velocity }) => [
    { kind: 'on' as const, midi, velocity, at: from },
    { kind: 'off' as const, midi, at: to },
  ])
  // What ends is let go before the same key begins anew.
  const sorted = events.sort((a, b) => a.at - b.at || Number(a.kind === 'on') - Number(b.kind === 'on'))
  return [
    { kind: 'text', name: 'trackName', text: part.title, at: 0 },
    { kind: 'program', program: instrumentSound(instrument.name).program - 1, at: 0 },
    ...sorted,
  ]
}
