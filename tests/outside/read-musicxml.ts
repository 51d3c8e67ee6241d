import { type Measure, type Notation, type NoteEntry, parse, pitchToSemitone } from 'musicxml-io'

/** A note as a stranger reads it from the file. Times in divisions. */
export interface ReadNote {
  readonly measure: number
  /** From the start of its measure. */
  readonly at: number
  readonly ticks: number
  readonly staff: number
  /** Written pitch plus transposition as a MIDI number; null for what has no pitch. */
  readonly midi: number | null
  readonly cross: boolean
  readonly string: number | null
  readonly fret: number | null
  readonly finger: string | null
  readonly ties: readonly string[]
  readonly notations: readonly Notation[]
  readonly entry: NoteEntry
}

/** A measure with its notes in the order of the file, rests left out. */
export interface ReadMeasure {
  readonly number: string
  readonly implicit: boolean
  /** What its time signature asks for. */
  readonly full: number
  /** What its voices add up to, by staff. */
  readonly lengths: ReadonlyMap<number, number>
  readonly notes: readonly ReadNote[]
  readonly measure: Measure
}

/** Reads a MusicXML file with a library that is not ours, and counts its measures. */
export function readMusicXml(xml: string): {
  readonly measures: readonly ReadMeasure[]
  readonly score: ReturnType<typeof parse>
} {
  const score = parse(xml)
  let divisions = 0
  let time = { beats: 4, beatType: 4 }
  let transposed = 0
  const measures = score.parts[0]!.measures.map((measure, index): ReadMeasure => {
    const { attributes } = measure
    divisions = attributes?.divisions ?? divisions
    if (attributes?.time !== undefined)
      time = { beats: Number(attributes.time.beats), beatType: attributes.time.beatType }
    transposed = attributes?.transpose?.chromatic ?? transposed
    const notes: ReadNote[] = []
    const lengths = new Map<number, number>()
    let at = 0
    let start = 0
    for (const entry of measure.entries) {
      if (entry.type === 'backup') at -= entry.duration
      if (entry.type === 'forward') throw new Error('a forward in a measure without gaps')
      if (entry.type !== 'note') continue
      if (entry.chord !== true) {
        start = at
        at += entry.duration
        const staff = entry.staff!
        lengths.set(staff, Math.max(lengths.get(staff) ?? 0, at))
      }
      if (entry.rest === undefined) notes.push(readNote(entry, index, start, transposed))
    }
    return {
      number: measure.number,
      implicit: measure.implicit ?? false,
      full: (divisions * 4 * time.beats) / time.beatType,
      lengths,
      notes,
      measure,
    }
  })
  return { measures, score }
}

function readNote(entry: NoteEntry, measure: number, at: number, transposed: number): ReadNote {
  const notations = entry.notations ?? []
  const told = (key: 'string' | 'fret' | 'fingering') => {
    const found = notations.find((notation) => notation.type === 'technical' && notation.technical === key)
    return found?.type === 'technical' ? found : null
  }
  return {
    measure,
    at,
    ticks: entry.duration,
    staff: entry.staff!,
    midi: entry.pitch === undefined ? null : pitchToSemitone(entry.pitch) + 12 + transposed,
    cross: entry.notehead?.value === 'x',
    string: told('string')?.string ?? null,
    fret: told('fret')?.fret ?? null,
    finger: told('fingering')?.text ?? null,
    ties: (entry.ties ?? (entry.tie === undefined ? [] : [entry.tie])).map(({ type }) => type),
    notations,
    entry,
  }
}
