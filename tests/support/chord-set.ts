import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

/** One published shape of the open chord data set `@tombatossals/chords-db` 0.5.1 (MIT). Strings from the thick one on. */
export interface PublishedShape {
  /** Key, suffix and position from 1, as in `C/m7#2`. */
  readonly id: string
  /** The set's own name of the key: `Csharp`, `Bb`. */
  readonly key: string
  readonly suffix: string
  /** The chord symbol it is published under, in the spelling of lessons. */
  readonly symbol: string
  /** Absolute fret, 0 open, null muted. */
  readonly frets: readonly (number | null)[]
  readonly fingers: readonly number[]
  /** Sounding MIDI numbers, thick strings first, muted ones left out. */
  readonly midi: readonly number[]
}

interface Position {
  readonly frets: readonly number[]
  readonly fingers: readonly number[]
  readonly baseFret: number
  readonly midi: readonly number[]
}

interface ChordSetFile {
  readonly chords: Readonly<Record<string, readonly { readonly suffix: string; readonly positions: Position[] }[]>>
}

/** What the set means by suffixes that are written otherwise: its `alt` is the triad with a flat fifth. */
const SUFFIXES: Readonly<Record<string, string>> = {
  major: '',
  minor: 'm',
  alt: '(b5)',
  '7sg': '7',
  aug7: '7#5',
  aug9: '9#5',
  mmaj7: 'm(maj7)',
  mmaj7b5: 'm(maj7b5)',
  mmaj9: 'm(maj9)',
  mmaj11: 'm(maj11)',
}

/** Every shape of the set, in its order. `main` of the package names a file it does not contain, hence the path to the data. */
export function readChordSet(): readonly PublishedShape[] {
  const path = createRequire(import.meta.url).resolve('@tombatossals/chords-db/lib/guitar.json')
  const file = JSON.parse(readFileSync(path, 'utf8')) as ChordSetFile
  return Object.entries(file.chords).flatMap(([key, entries]) =>
    entries.flatMap(({ suffix, positions }) =>
      positions.map((position, index) => ({
        id: `${key}/${suffix}#${index + 1}`,
        key,
        suffix,
        symbol: key.replace('sharp', '#') + (SUFFIXES[suffix] ?? suffix),
        frets: position.frets.map((fret) => (fret < 0 ? null : fret === 0 ? 0 : fret + position.baseFret - 1)),
        fingers: position.fingers,
        midi: position.midi,
      })),
    ),
  )
}

/** Ids of published shapes whose fingers or tones are faulty, found by hand (fingers) and by recomputing (tones). */
export function readExclusions(): ReadonlySet<string> {
  return new Set(readData<readonly string[]>('chord-set-exclusions.json'))
}

/** Ids of published shapes whose notes are not those of their name. */
export function readWrongTones(): ReadonlySet<string> {
  return new Set(readData<readonly { readonly id: string }[]>('chord-set-wrong-tones.json').map(({ id }) => id))
}

function readData<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(`../data/${name}`, import.meta.url), 'utf8')) as T
}
