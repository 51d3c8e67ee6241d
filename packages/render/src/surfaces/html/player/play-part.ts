import { type Bar, barTicks, type Lesson, type Part, swungAt } from '@barwise/parser'
import { countLabel } from '../../../engrave/count-label.ts'
import { barContents } from '../../../engrave/rhythm/write-rhythm.ts'
import { keyStroke } from '../../../exchange/midi/key-strokes.ts'
import { playedBars } from '../../../exchange/midi/played-bars.ts'
import { type PlayedNote, playedNotes } from '../../../exchange/midi/played-notes.ts'
import { playedSeconds, secondsOf } from '../../../exchange/midi/played-seconds.ts'
import { swungNotes } from '../../../exchange/midi/swung-notes.ts'
import {
  type PlayBar,
  type PlayEvent,
  type PlayNote,
  type PlayPart,
  type PlaySound,
  type PlayStroke,
  TOUCHES,
  type Touch,
} from '../../../player/play-data.ts'

/** A stroke crosses two neighbouring strings in this time, and a rolled chord in that; judgement, by ear. */
const STRUM_MS = 5
const ROLL_MS = 38

/** A part for the play-along: the same bars, notes and times as its MIDI file has, in milliseconds. */
export function playPart(lesson: Lesson, part: Part): PlayPart {
  const played = playedBars(part)
  const contents = barContents(part.bars, part.repeats)
  const seconds = playedSeconds(played)
  const notes = swungNotes(playedNotes(lesson, part, played), played)
  const bars = played.map(({ bar, start }) => playBar(bar, seconds(start)))
  return {
    id: part.id,
    title: part.title,
    bars,
    ...strokesOf(notes, seconds),
    events: Object.fromEntries(
      part.bars.map((bar, index) => [bar.number, playEvents(bar, contents[index]?.heldIn?.at ?? null)]),
    ),
    same: Object.fromEntries(part.bars.flatMap(({ number, sameAs }) => (sameAs === null ? [] : [[number, sameAs]]))),
  }
}

function playBar(bar: Bar, start: number): PlayBar {
  const { number, length, beatTicks, tempoBpm, firstBeat, metre } = bar
  const beats = Math.round(barTicks(metre) / beatTicks)
  const [startMs, lengthMs] = [milliseconds(start), milliseconds(secondsOf(bar, length))]
  const beatMs = Math.round(60_000_000 / tempoBpm) / 1000
  return [number, startMs, lengthMs, beatMs, tempoBpm, beats, firstBeat]
}

/** The events of a bar and the beats that they, or what is held in from the bar before, go on over. */
function playEvents(bar: Bar, heldInTicks: number | null): readonly PlayEvent[] {
  const events = bar.events.map(({ at }): PlayEvent => [at, ...momentOf(bar, at)])
  const beats = Array.from({ length: Math.ceil(bar.length / bar.beatTicks) }, (_, beat) => beat * bar.beatTicks)
  const over = beats.flatMap((ticks): readonly PlayEvent[] => {
    const at = bar.events.findLast((event) => event.at <= ticks)?.at ?? heldInTicks
    return at === null || at === ticks ? [] : [[at, ...momentOf(bar, ticks), ticks]]
  })
  return [...events, ...over].sort(([, one], [, other]) => one - other)
}

/** When a moment of a bar comes, and its count. */
function momentOf(bar: Bar, ticks: number): readonly [offsetMs: number, count: string] {
  const count = countLabel(bar, ticks)
  const beat = String(bar.firstBeat + Math.floor(ticks / bar.beatTicks) + 1)
  const said = count === null || count.beat ? beat : `${beat} ${count.text}`
  return [milliseconds(secondsOf(bar, swungAt(bar)(ticks))), said]
}

/** The notes by the action that sounds them; what sounds alike is told once. */
function strokesOf(
  notes: readonly PlayedNote[],
  seconds: (at: number) => number,
): Pick<PlayPart, 'strokes' | 'sounds'> {
  const strokes: PlayStroke[] = []
  const sounds = new Map<string, { readonly place: number; readonly sound: PlaySound }>()
  for (const together of byAction(notes)) {
    const [first] = together
    if (first === undefined) continue
    const sound = soundOf(together, seconds)
    const key = JSON.stringify(sound)
    const known = sounds.get(key) ?? { place: sounds.size, sound }
    sounds.set(key, known)
    strokes.push([milliseconds(seconds(first.from)), known.place])
  }
  return { strokes, sounds: [...sounds.values()].map(({ sound }) => sound) }
}

/** Notes that one event begins together; notes come in order of time, thickest string first. */
function byAction(notes: readonly PlayedNote[]): readonly (readonly PlayedNote[])[] {
  const actions: PlayedNote[][] = []
  for (const note of notes) {
    const last = actions.at(-1)
    if (last?.[0]?.from === note.from && last[0].event === note.event) last.push(note)
    else actions.push([note])
  }
  return actions
}

function soundOf(notes: readonly PlayedNote[], seconds: (at: number) => number): PlaySound {
  const event = notes[0]?.event
  const marks = event?.marks ?? []
  const stress = marks.includes('accent') ? 1 : marks.includes('ghost') ? -1 : 0
  const sounding = notes.map((note): PlayNote => {
    const { midi, from, to } = keyStroke(note)
    return [midi, milliseconds(seconds(to) - seconds(from)), TOUCHES.indexOf(touchOf(note))]
  })
  const rolled = event?.kind === 'strike' && event.rolled
  const spread = rolled ? ROLL_MS : STRUM_MS
  const direction = event?.stroke === 'up' ? -1 : event?.stroke === 'down' || rolled ? 1 : 0
  return [stress, spread * direction, ...sounding]
}

function touchOf({ touch, event }: PlayedNote): Touch {
  return touch === 'struck' && event.palmMuted ? 'muted' : touch
}

function milliseconds(seconds: number): number {
  return Math.round(seconds * 1000)
}
