import { assertNever, type Event, type Lesson, type Part, type Scratch, type Strike, type Ticks } from '@barwise/parser'
import { barContents } from '../../engrave/rhythm/write-rhythm.ts'
import type { PlayedBar } from './played-bars.ts'

/** A sound of one string. Times in ticks from the start of the part as played, before any swing. */
export interface PlayedNote {
  readonly string: number
  /** Sounding MIDI number; of a damped string that of the open one. */
  readonly midi: number
  readonly from: Ticks
  readonly to: Ticks
  /** `legato`: sounded by the fretting hand alone. `damped`: a scratch or a dead string. */
  readonly touch: 'struck' | 'legato' | 'damped'
  readonly event: Strike | Scratch
}

/** A string that sounds. It goes on ringing past its end until something stops it. */
interface Open {
  note: Omit<PlayedNote, 'to'>
  until: Ticks
  rings: boolean
}

/**
 * Every sound of a part as played, in order of beginning, thickest string first. A held note is one sound, over bar lines and over the
 * turn of a repeat; a ringing one sounds until its own string is struck, sounded or scratched, or until a silence or the end.
 */
export function playedNotes(lesson: Lesson, part: Part, played: readonly PlayedBar[]): readonly PlayedNote[] {
  const contents = barContents(part.bars, part.repeats)
  const neck = silentNeck(lesson)
  let end = 0
  for (const { bar, index, start } of played) {
    end = start + bar.length
    const held = contents[index]?.heldIn ?? null
    if (held !== null) holdOn(neck, held.event, start, Math.min(end, start + held.at + held.event.duration))
    for (const event of bar.events)
      play(neck, event, start + event.at, Math.min(end, start + event.at + event.duration))
  }
  stopAll(neck, end)
  return neck.done.sort((a, b) => a.from - b.from || b.string - a.string)
}

/** What sounds on each string at a moment, and everything that has ended. */
interface Neck {
  readonly open: Map<number, Open>
  readonly done: PlayedNote[]
  /** Sounding MIDI number of each open string. */
  readonly openMidi: readonly number[]
}

function silentNeck({ instrument }: Lesson): Neck {
  return { open: new Map(), done: [], openMidi: instrument.tuning.map((midi) => midi + instrument.capo) }
}

function play(neck: Neck, event: Event, from: Ticks, to: Ticks): void {
  switch (event.kind) {
    case 'rest':
      stopAll(neck, from)
      return
    case 'scratch':
      for (const string of event.strings ?? [...neck.open.keys()]) stop(neck, string, from)
      for (const string of event.shownOn) damp(neck, string, { event, from, to })
      return
    case 'strike':
      strike(neck, event, from, to)
      return
    default:
      assertNever(event)
  }
}

function strike(neck: Neck, event: Strike, from: Ticks, to: Ticks): void {
  const rings = event.marks.includes('ring')
  for (const { string, midi, from: start } of event.notes) {
    if (midi === null) {
      damp(neck, string, { event, from, to })
      continue
    }
    if (start === 'held' && prolong(neck, { string, midi, from, to, rings })) continue
    stop(neck, string, from)
    const touch = event.stroke === null ? 'legato' : 'struck'
    neck.open.set(string, { note: { string, midi, from, touch, event }, until: to, rings })
  }
}

/** Prolongs what an event of an earlier bar still sounds. */
function holdOn(neck: Neck, event: Event, from: Ticks, to: Ticks): void {
  if (event.kind !== 'strike') return
  for (const { string, midi } of event.notes) if (midi !== null) prolong(neck, { string, midi, from, to, rings: false })
}

interface Sound {
  readonly string: number
  readonly midi: number
  readonly from: Ticks
  readonly to: Ticks
  readonly rings: boolean
}

/** Lets a string sound on at the same pitch; false when it does not sound. */
function prolong(neck: Neck, { string, midi, from, to, rings }: Sound): boolean {
  const open = neck.open.get(string)
  if (open === undefined || open.note.midi !== midi || (!open.rings && open.until < from)) return false
  open.until = Math.max(open.until, to)
  open.rings ||= rings
  return true
}

function damp(neck: Neck, string: number, sound: Pick<PlayedNote, 'event' | 'from' | 'to'>): void {
  stop(neck, string, sound.from)
  const midi = neck.openMidi[string - 1]
  if (midi !== undefined) neck.done.push({ string, midi, touch: 'damped', ...sound })
}

/** Ends what sounds on a string: at its own end, or now when it rings on. */
function stop(neck: Neck, string: number, now: Ticks): void {
  const open = neck.open.get(string)
  if (open === undefined) return
  neck.open.delete(string)
  neck.done.push({ ...open.note, to: open.rings ? now : Math.min(open.until, now) })
}

function stopAll(neck: Neck, now: Ticks): void {
  for (const string of [...neck.open.keys()]) stop(neck, string, now)
}
