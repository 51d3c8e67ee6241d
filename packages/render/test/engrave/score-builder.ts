import type {
  Alternative,
  Bar,
  Event,
  Grid,
  Group,
  Instrument,
  Key,
  Lesson,
  Mark,
  Metre,
  Note,
  NoteStart,
  Part,
  Repeat,
  Stroke,
  Technique,
} from '@barwise/parser'
import { barTicks } from '@barwise/parser'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'

const SPAN = { start: 0, end: 0 }
const NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B']
const FLAT_NAMES = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B']

export const BASS: Instrument = {
  ...GUITAR,
  name: 'bass',
  tuning: [43, 38, 33, 28],
  stringNames: ['G2', 'D2', 'A1', 'E1'],
  clef: 'bass-8',
}
export const UKULELE: Instrument = {
  ...GUITAR,
  name: 'ukulele',
  tuning: [69, 64, 60, 67],
  stringNames: ['A4', 'E4', 'C4', 'G4'],
  clef: 'treble',
  writtenAbove: 0,
}

export const E_MINOR: Key = { tonic: 'E', mode: 'minor', fifths: 1 }
export const C_MAJOR: Key = { tonic: 'C', mode: 'major', fifths: 0 }

/** Written pitch of a fret, sharps unless `flats`. */
export function written(instrument: Instrument, string: number, fret: number, flats = false): string {
  const midi = (instrument.tuning[string - 1] ?? 0) + fret + instrument.writtenAbove
  return `${(flats ? FLAT_NAMES : NAMES)[midi % 12]}${Math.floor(midi / 12) - 1}`
}

export interface StrikeOptions {
  stroke?: Stroke
  technique?: Technique
  marks?: Mark[]
  from?: Record<number, NoteStart>
  fromFret?: Record<number, number>
  ringsTo?: number
  palmMuted?: boolean
  rolled?: boolean
  flats?: boolean
  instrument?: Instrument
}

/** `frets`: string number to fret; null is dead. */
export function strike(duration: number, frets: Record<number, number | null>, o: StrikeOptions = {}): Event {
  const instrument = o.instrument ?? GUITAR
  const notes: Note[] = Object.entries(frets)
    .map(([s, fret]): Note => {
      const string = Number(s)
      return {
        string,
        fret,
        finger: null,
        fingerGiven: false,
        midi: fret === null ? null : (instrument.tuning[string - 1] ?? 0) + fret,
        written: fret === null ? null : written(instrument, string, fret, o.flats),
        from: fret === null ? 'dead' : (o.from?.[string] ?? 'struck'),
        fromFret: o.fromFret?.[string] ?? null,
        ringsTo: o.ringsTo ?? null,
      }
    })
    .sort((a, b) => b.string - a.string)
  return {
    kind: 'strike',
    voice: 1,
    at: 0,
    duration,
    span: SPAN,
    stroke: o.stroke === undefined ? 'down' : o.stroke,
    strokeGiven: false,
    technique: o.technique ?? null,
    target: { shape: null, shift: 0, only: null, added: [] },
    notes,
    marks: o.marks ?? [],
    palmMuted: o.palmMuted ?? false,
    rolled: o.rolled ?? false,
  }
}

export function scratch(
  duration: number,
  shownOn: number[],
  o: { stroke?: Stroke; marks?: Mark[]; palmMuted?: boolean } = {},
): Event {
  return {
    kind: 'scratch',
    at: 0,
    duration,
    span: SPAN,
    stroke: o.stroke ?? 'down',
    strokeGiven: false,
    strings: null,
    shownOn,
    marks: o.marks ?? [],
    palmMuted: o.palmMuted ?? false,
  }
}

export function rest(duration: number): Event {
  return { kind: 'rest', at: 0, duration, span: SPAN }
}

export interface BarOptions {
  metre?: Metre
  key?: Key
  grid?: Grid
  length?: number
  firstBeat?: number
  chords?: [number, string][]
  section?: string
  groups?: Group[]
  tempoBpm?: number
  beatTicks?: number
  number?: number
  /** Time taken at the start by what is held in. */
  lead?: number
}

/** A bar of events one after another; strokes alternate by sixteenth unless given. */
export function bar(events: Event[], o: BarOptions = {}): Bar {
  const metre = o.metre ?? { count: 4, unit: 4 }
  let at = o.lead ?? 0
  const placed = events.map((event) => {
    const put = { ...event, at }
    at += event.duration
    return put
  })
  return {
    number: o.number ?? 1,
    start: 0,
    length: o.length ?? barTicks(metre),
    metre,
    grid: o.grid ?? 16,
    beatTicks: o.beatTicks ?? (4 * 3360) / metre.unit,
    firstBeat: o.firstBeat ?? 0,
    key: o.key ?? C_MAJOR,
    tempoBpm: o.tempoBpm ?? 92,
    feel: 'straight',
    stroke: 'alternate',
    section: o.section ?? null,
    chords: (o.chords ?? []).map(([t, symbol]) => ({ at: t, symbol, written: true })),
    groups: o.groups ?? [],
    events: placed,
    alternatives: [] as Alternative[],
    remarks: [],
    sameAs: null,
    copyOf: null,
    span: SPAN,
  }
}

/** Numbers the bars from 1 (or 0 for a pickup given first) and sets their starts. */
export function lessonOf(
  bars: Bar[],
  o: { instrument?: Instrument; pickup?: boolean; repeats?: Repeat[] } = {},
): { lesson: Lesson; part: Part } {
  let start = 0
  const numbered = bars.map((b, i) => {
    const number = o.pickup ? i : i + 1
    const put = { ...b, number, start: number === 0 ? 0 : start }
    if (number > 0) start += b.length
    return put
  })
  const part: Part = {
    id: 'p',
    title: 'Part',
    stroke: 'alternate',
    count: null,
    touch: 'light',
    show: ['sheet'],
    bars: numbered,
    repeats: o.repeats ?? [],
    span: SPAN,
  }
  const lesson: Lesson = {
    kind: 'lesson',
    file: 'l.md',
    instrument: o.instrument ?? GUITAR,
    shapes: [],
    parts: [part],
    blocks: [],
    settings: {
      title: 'T',
      subtitle: null,
      author: null,
      level: null,
      licence: null,
      language: 'en',
      tempoBpm: 92,
      goalBpm: null,
      metre: { count: 4, unit: 4 },
      count: null,
      key: bars[0]?.key ?? C_MAJOR,
      keyGiven: true,
      tempoGiven: true,
      feel: 'straight',
      stroke: 'alternate',
      hand: 'adult',
      touch: 'light',
      strings: 'numbers',
      accept: [],
    },
  }
  return { lesson, part }
}
