import type { Bar, Finger, Lesson, Note, Part, SpelledPitch } from '@barwise/parser'
import { beamGroups } from '../../engrave/rhythm/beam-groups.ts'
import { type BarContent, barContents, type WrittenNote, writeRhythm } from '../../engrave/rhythm/write-rhythm.ts'
import { staffPitch } from '../../engrave/staff/staff-place.ts'

/** One string of a written note: a figure of the tablature, or a cross. */
export interface WrittenString {
  /** 1 is the string nearest the floor. */
  readonly string: number
  /** Null for a cross: a dead string or a scratch. */
  readonly fret: number | null
  /** As the page prints it: only of single notes, those of shapes stand in their grids. */
  readonly finger: Finger | null
  /** At the pitch its clef reads, capo left out; null for a cross. */
  readonly pitch: SpelledPitch | null
  /** Null in a scratch. */
  readonly note: Note | null
}

/** A written note, chord, scratch or rest with its strings (highest number first) and its place in the part. */
export interface WrittenSound {
  readonly bar: Bar
  readonly barIndex: number
  readonly index: number
  readonly written: WrittenNote
  readonly strings: readonly WrittenString[]
}

/** A bar as it is written. `beams` are groups of two notes and more. */
export interface WrittenBar {
  readonly bar: Bar
  readonly sounds: readonly WrittenSound[]
  readonly beams: readonly (readonly WrittenNote[])[]
}

/** A part written out in note values: the rhythm of the page, so that the file and the page never disagree. */
export function writtenPart(lesson: Lesson, part: Part): readonly WrittenBar[] {
  return barContents(part.bars, part.repeats).map((content, barIndex) => writtenBar(content, barIndex, lesson))
}

function writtenBar(content: BarContent, barIndex: number, lesson: Lesson): WrittenBar {
  const { bar } = content
  const notes = writeRhythm(content)
  const sounds = notes.map((written, index) => ({
    bar,
    barIndex,
    index,
    written,
    strings: stringsOf(written, lesson),
  }))
  return { bar, sounds, beams: beamGroups(notes, content).filter((group) => group.length > 1) }
}

function stringsOf({ event }: WrittenNote, { instrument }: Lesson): readonly WrittenString[] {
  switch (event.kind) {
    case 'rest':
      return []
    case 'scratch':
      return [...event.shownOn]
        .sort((a, b) => b - a)
        .map((string) => ({ string, fret: null, finger: null, pitch: null, note: null }))
    case 'strike':
      return event.notes.map((note) => ({
        string: note.string,
        fret: note.fret,
        finger: event.target.shape === null && note.fret !== null ? note.finger : null,
        pitch: note.written === null ? null : clefPitch(note.written, instrument.writtenAbove),
        note,
      }))
  }
}

/** A written pitch at the height its clef reads: a clef with a small 8 below reads an octave lower than the plain one. */
function clefPitch(written: string, writtenAbove: 0 | 12): SpelledPitch {
  const { letter, alter, diatonic } = staffPitch(written)
  return { letter, alter, octave: Math.floor(diatonic / 7) - writtenAbove / 12 }
}
