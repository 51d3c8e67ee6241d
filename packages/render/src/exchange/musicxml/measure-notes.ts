import type { Instrument, SpelledPitch } from '@barwise/parser'
import { beamRuns, hooksRight } from '../../engrave/rhythm/beam-groups.ts'
import { beamCount } from '../../engrave/rhythm/note-value.ts'
import type { WrittenNote } from '../../engrave/rhythm/write-rhythm.ts'
import { accidentalMemory } from '../../engrave/staff/accidental-memory.ts'
import { staffY } from '../../engrave/staff/staff-place.ts'
import { element, type XmlElement } from '../xml-door.ts'
import { type Joints, notationsOf } from './notations.ts'
import { type NoteSpec, noteElement } from './note-elements.ts'
import type { Staff } from './spanners.ts'
import type { WrittenBar, WrittenSound, WrittenString } from './written-part.ts'

const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const
/** Staff spaces below the top line on which the crosses of a scratch stand, as the page has them: three, or one for a single string. */
const CROSSES = { many: [3, 2, 1], one: [2] } as const

/** The notes of a bar for one staff, one list for each sound. */
export interface BarNotes {
  readonly of: (sound: WrittenSound) => readonly XmlElement[]
}

interface Head {
  readonly what: NoteSpec['what']
  readonly strings: readonly WrittenString[]
  readonly accidental: SpelledPitch['alter'] | null
}

/** The notes of the staff: heads lowest first, unisons once, with accidentals and beams. */
export function staffNotes(bar: WrittenBar, instrument: Instrument, joints: Joints): BarNotes {
  const memory = accidentalMemory(bar.bar.key)
  const heads = new Map(bar.sounds.map((sound) => [sound, headsOf(sound, instrument, memory)]))
  const beams = beamsOf(bar)
  return {
    of: (sound) => notesOf(sound, heads.get(sound) ?? [], { staff: 1, beams: beams.get(sound.written) ?? [], joints }),
  }
}

/** The notes of the tablature: one for each string, thickest first. */
export function tabNotes(joints: Joints): BarNotes {
  return {
    of: (sound) => {
      const heads = sound.strings.map((string): Head => {
        const { pitch } = string
        return {
          what: pitch === null ? { kind: 'cross', displayed: null } : { kind: 'pitch', pitch },
          strings: [string],
          accidental: null,
        }
      })
      return notesOf(sound, heads, { staff: 2, beams: [], joints })
    },
  }
}

function headsOf(
  { written, strings }: WrittenSound,
  instrument: Instrument,
  memory: ReturnType<typeof accidentalMemory>,
): readonly Head[] {
  if (written.event.kind === 'rest') return []
  const sounding = strings.filter(({ pitch }) => pitch !== null)
  if (sounding.length === 0) {
    const ys = written.event.kind === 'scratch' && strings.length === 1 ? CROSSES.one : CROSSES.many
    return ys.map((y) => ({
      what: { kind: 'cross', displayed: pitchAt(y, instrument) },
      strings,
      accidental: null,
    }))
  }
  const heads: Head[] = []
  for (const string of [...sounding].sort((a, b) => heightOf(a) - heightOf(b))) {
    const { pitch, note } = string
    if (pitch === null) continue
    const same = heads.findIndex(({ strings: [one] }) => one?.note?.written === note?.written)
    const unison = heads[same]
    if (unison !== undefined) {
      heads[same] = { ...unison, strings: [...unison.strings, string] }
      continue
    }
    const silent = written.tiedIn || note?.from === 'held'
    const accidental = silent ? null : memory.sign({ ...pitch, diatonic: heightOf(string) })
    heads.push({ what: { kind: 'pitch', pitch }, strings: [string], accidental })
  }
  return heads
}

/** Letters above C0: the height on the staff. */
function heightOf({ pitch }: WrittenString): number {
  return pitch === null ? 0 : pitch.octave * 7 + LETTERS.indexOf(pitch.letter)
}

/** The pitch that stands at a height of the staff: its place is named as its clef reads. */
function pitchAt(y: number, instrument: Instrument): SpelledPitch {
  const topLine = staffY(0, instrument.clef) * 2
  const diatonic = topLine - y * 2 - (instrument.writtenAbove / 12) * 7
  return { letter: LETTERS[((diatonic % 7) + 7) % 7] ?? 'C', alter: 0, octave: Math.floor(diatonic / 7) }
}

interface Setting {
  readonly staff: Staff
  readonly beams: readonly XmlElement[]
  readonly joints: Joints
}

function notesOf(sound: WrittenSound, heads: readonly Head[], setting: Setting): readonly XmlElement[] {
  const { written } = sound
  const { event } = written
  const { staff, joints } = setting
  const base = { staff, bracketed: event.kind !== 'rest' && event.marks.includes('ghost') && !written.tiedIn }
  if (event.kind === 'rest') {
    const notations = notationsOf({ sound, staff, strings: [], leads: true, joints })
    const rest = { ...base, what: { kind: 'rest' }, inChord: false, accidental: null, palmMuted: false } as const
    return [noteElement(written, { ...rest, ties: [], beams: [], notations })]
  }
  return heads.map(({ what, strings, accidental }, i) => {
    const ties = joints.tiesAt(
      sound,
      strings.map(({ string }) => string),
    )
    return noteElement(written, {
      ...base,
      what,
      inChord: i > 0,
      accidental,
      palmMuted: event.palmMuted,
      ties: ties.map((end) => (end === 'into' ? 'stop' : end)),
      beams: i === 0 ? setting.beams : [],
      notations: notationsOf({ sound, staff, strings, leads: i === 0, joints }),
    })
  })
}

/** The beam elements of each note of a bar, level by level. */
function beamsOf({ bar, beams }: WrittenBar): ReadonlyMap<WrittenNote, readonly XmlElement[]> {
  const found = new Map<WrittenNote, XmlElement[]>()
  for (const group of beams) {
    const deepest = Math.max(...group.map(({ value }) => beamCount(value)))
    for (let level = 1; level <= deepest; level += 1) {
      for (const run of beamRuns(group, level, bar.metre)) {
        run.forEach((note, i) => {
          const value =
            run.length === 1
              ? hooksRight(note, group)
                ? 'forward hook'
                : 'backward hook'
              : i === 0
                ? 'begin'
                : i === run.length - 1
                  ? 'end'
                  : 'continue'
          found.set(note, [...(found.get(note) ?? []), element('beam', { number: level }, value)])
        })
      }
    }
  }
  return found
}
