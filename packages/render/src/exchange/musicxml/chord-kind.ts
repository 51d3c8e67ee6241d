import type { ChordSymbol } from '@barwise/parser'

/** A change to the tones of a kind. `alter` in semitones, reckoned as the format does. */
export interface ChordDegree {
  readonly value: number
  readonly alter: number
  readonly type: 'add' | 'alter' | 'subtract'
}

/** How a symbol is told: the kind that is nearest, and what is different. */
export interface ChordKind {
  readonly kind: string
  readonly degrees: readonly ChordDegree[]
}

/**
 * The kinds by their tones, the plainest first. Source: MusicXML 4.0, kind-value. Elevenths and thirteenths hold all the thirds below, as
 * our symbols do.
 */
const KINDS: readonly (readonly [string, string])[] = [
  ['major', '1 3 5'],
  ['minor', '1 b3 5'],
  ['dominant', '1 3 5 b7'],
  ['major-seventh', '1 3 5 7'],
  ['minor-seventh', '1 b3 5 b7'],
  ['power', '1 5'],
  ['suspended-fourth', '1 4 5'],
  ['suspended-second', '1 2 5'],
  ['major-sixth', '1 3 5 6'],
  ['minor-sixth', '1 b3 5 6'],
  ['augmented', '1 3 #5'],
  ['diminished', '1 b3 b5'],
  ['augmented-seventh', '1 3 #5 b7'],
  ['half-diminished', '1 b3 b5 b7'],
  ['diminished-seventh', '1 b3 b5 bb7'],
  ['major-minor', '1 b3 5 7'],
  ['dominant-ninth', '1 3 5 b7 9'],
  ['major-ninth', '1 3 5 7 9'],
  ['minor-ninth', '1 b3 5 b7 9'],
  ['dominant-11th', '1 3 5 b7 9 11'],
  ['major-11th', '1 3 5 7 9 11'],
  ['minor-11th', '1 b3 5 b7 9 11'],
  ['dominant-13th', '1 3 5 b7 9 11 13'],
  ['major-13th', '1 3 5 7 9 11 13'],
  ['minor-13th', '1 b3 5 b7 9 11 13'],
]

/**
 * The kind of a chord symbol and the degrees that differ from it, as few as can be; of two as near, the plainer kind.
 *
 * @example chordKind(C7b9) // dominant, add 9 lowered by 1
 * @example chordKind(A7sus4) // suspended-fourth, add 7
 */
export function chordKind({ tones }: Pick<ChordSymbol, 'tones'>): ChordKind {
  const names = tones.map(({ name }) => name as string)
  let best: ChordKind | null = null
  for (const [kind, text] of KINDS) {
    const degrees = differences(names, text.split(' '))
    if (best === null || degrees.length < best.degrees.length) best = { kind, degrees }
  }
  return best ?? { kind: 'major', degrees: [] }
}

function differences(tones: readonly string[], kind: readonly string[]): readonly ChordDegree[] {
  const extra = tones.filter((name) => !kind.includes(name))
  const degrees: ChordDegree[] = []
  for (const gone of kind.filter((name) => !tones.includes(name))) {
    const at = extra.findIndex((name) => numberOf(name) === numberOf(gone))
    const [put] = at < 0 ? [] : extra.splice(at, 1)
    degrees.push(
      put === undefined
        ? { value: numberOf(gone), alter: 0, type: 'subtract' }
        : { value: numberOf(gone), alter: signOf(put) - signOf(gone), type: 'alter' },
    )
  }
  for (const name of extra) degrees.push({ value: numberOf(name), alter: addedAlter(name), type: 'add' })
  return degrees
}

/** An added degree is reckoned from a dominant chord: major and perfect, with a minor seventh. Source: MusicXML 4.0, degree-alter. */
function addedAlter(name: string): number {
  return signOf(name) + (numberOf(name) === 7 ? 1 : 0)
}

function numberOf(name: string): number {
  return Number(name.replace(/^[b#]+/, ''))
}

function signOf(name: string): number {
  return name.startsWith('#') ? 1 : name.startsWith('bb') ? -2 : name.startsWith('b') ? -1 : 0
}
