import type { Key } from '../score/pitch.ts'
import { type ChordSymbol, parseChordSymbol } from './chord-symbol.ts'
import { NAMING_COSTS, type NamingCosts } from './chord-types.ts'
import { isSharpKey, scaleOf } from './key.ts'
import { formatNoteName, type NoteName, nameOnSide, pitchClass, pitchClassOf } from './note-name.ts'
import { omissibleTones } from './omissible-tones.ts'

/** A name for a set of sounding notes; a lower cost is a better name. */
export interface NamedChord {
  /** The chord symbol, with its slash when the root is not the lowest. */
  readonly symbol: string
  /** The symbol without its slash. */
  readonly plain: string
  readonly cost: number
}

/** What helps to choose between names: the key, and the chord that comes before. */
export interface NamingContext {
  readonly key?: Key
  readonly before?: ChordSymbol | null
}

/** Names a set of sounding MIDI numbers, best first. */
export type Namer = (midis: readonly number[], context?: NamingContext) => readonly NamedChord[]

interface KnownType {
  readonly suffix: string
  readonly cost: number
  /** Semitones above the root. */
  readonly tones: readonly number[]
  /** Those that may be silent. */
  readonly omissible: ReadonlySet<number>
  readonly thirdAndSeventh: readonly number[] | null
}

/**
 * Every name that fits sounding notes, best first; empty where none does. All twelve notes are tried as the root of every
 * type: each sounding note has to be a tone of the chord, save the lowest, which may be a slash bass
 * under three others; only tones that the trade leaves out
 * may be silent. Two pitch classes a fifth apart are a power chord; any other two are a double stop, and one is a note: no name.
 *
 * @example nameChord([45, 52, 57, 60, 64])[0]?.symbol // 'Am'
 * @example nameChord([45, 52, 55, 60, 64]).slice(0, 2).map((name) => name.symbol) // ['Am7', 'C6/A'] in this order
 */
export const nameChord: Namer = createNamer(NAMING_COSTS)

/** A namer with costs of its own. */
function createNamer(costs: NamingCosts): Namer {
  const types = costs.types.map(knownType)
  return (midis, context = {}) => {
    const sounding = [...new Set(midis.map(pitchClass))]
    if (sounding.length < 2) return []
    const bass = pitchClass(Math.min(...midis))
    const fitting = sounding.length === 2 ? types.filter((type) => type.suffix === '5') : types
    const names: NamedChord[] = []
    for (const type of fitting) {
      if (type.suffix === '5' && sounding.length > 2) continue
      for (let root = 0; root < 12; root += 1) {
        const cost = costOf(type, root, sounding, bass, costs)
        if (cost !== null) names.push(named(type, root, bass, cost - bonusOf(root, context, costs), context.key))
      }
    }
    return names.sort((a, b) => a.cost - b.cost)
  }
}

/**
 * The best name and, where another is nearly as good, that one too; null where nothing fits that is not
 * far-fetched.
 *
 * @example suggestName([45, 52, 55, 60, 64], { key: aMinor }) // { name: Am7, runnerUp: null }
 */
export function suggestName(
  midis: readonly number[],
  context: NamingContext = {},
): { readonly name: NamedChord; readonly runnerUp: NamedChord | null } | null {
  const [name, second] = nameChord(midis, context)
  if (name === undefined || name.cost > NAMING_COSTS.dearest) return null
  const close = second !== undefined && second.cost - name.cost < NAMING_COSTS.close
  return { name, runnerUp: close ? second : null }
}

function costOf(
  type: KnownType,
  root: number,
  sounding: readonly number[],
  bass: number,
  costs: NamingCosts,
): number | null {
  const above = sounding.map((pitch) => pitchClass(pitch - root))
  const lowest = pitchClass(bass - root)
  const foreign = above.filter((semitones) => !type.tones.includes(semitones))
  if (foreign.length > 1 || (foreign.length === 1 && (foreign[0] !== lowest || sounding.length < 4))) return null
  let cost = type.cost
  for (const semitones of type.tones) {
    if (above.includes(semitones)) continue
    if (semitones === 0) {
      if (!type.thirdAndSeventh?.every((tone) => above.includes(tone))) return null
      cost += costs.rootless
    } else if (type.omissible.has(semitones)) cost += semitones === 7 ? costs.noFifth : costs.omission
    else return null
  }
  return cost + (foreign.length === 1 ? costs.foreignBass : bassCost(lowest, costs))
}

function bassCost(lowest: number, costs: NamingCosts): number {
  if (lowest === 0) return 0
  if (lowest === 7) return costs.fifthBass
  return lowest === 3 || lowest === 4 ? costs.thirdBass : costs.otherToneBass
}

function bonusOf(root: number, { key, before }: NamingContext, costs: NamingCosts): number {
  const inKey = key !== undefined && scaleOf(key).some((degree) => pitchClassOf(degree) === root)
  const step = before ? pitchClass(pitchClassOf(before.root) - root) : null
  return (inKey ? costs.rootInKey : 0) + (step === 0 || step === 7 ? costs.followsChord : 0)
}

function named(type: KnownType, root: number, bass: number, cost: number, key: Key | undefined): NamedChord {
  const plain = formatNoteName(rootName(root, type, key)) + type.suffix
  const slash = bass === root ? '' : `/${formatNoteName(bassName(plain, bass, key))}`
  return { symbol: plain + slash, plain, cost }
}

/** A degree of the key by its name; else, near C major, the names chords usually have: Bb, Eb, but C#m, G#m. */
function rootName(root: number, type: KnownType, key: Key | undefined): NoteName {
  const degree = key && scaleOf(key).find((note) => pitchClassOf(note) === root)
  if (degree) return degree
  if (key && (key.fifths < 0 || key.fifths > 1)) return nameOnSide(root, isSharpKey(key))
  return nameOnSide(root, root === 6 || (type.tones.includes(3) && (root === 1 || root === 8)))
}

function bassName(plain: string, bass: number, key: Key | undefined): NoteName {
  const chord = parseChordSymbol(plain)
  const tone = chord?.tones.find((candidate) => pitchClassOf(candidate.note) === bass)?.note
  if (tone) return tone
  const degree = key && scaleOf(key).find((note) => pitchClassOf(note) === bass)
  if (degree) return degree
  if (key && (key.fifths < 0 || key.fifths > 1)) return nameOnSide(bass, isSharpKey(key))
  return nameOnSide(bass, bass !== 10 && bass !== 3)
}

function knownType({ suffix, cost }: { readonly suffix: string; readonly cost: number }): KnownType {
  const chord = parseChordSymbol(`C${suffix}`)
  if (chord === null) throw new Error(`no chord symbol: C${suffix}`)
  const omissible = omissibleTones(chord)
  const semitonesOf = (names: readonly string[]): number[] =>
    chord.tones.filter((tone) => names.includes(tone.name)).map((tone) => tone.semitones)
  const guides = [...semitonesOf(['b3', '3']), ...semitonesOf(['bb7', 'b7', '7'])]
  return {
    suffix,
    cost,
    tones: chord.tones.map((tone) => tone.semitones),
    omissible: new Set(chord.tones.filter((tone) => omissible.has(tone.name)).map((tone) => tone.semitones)),
    thirdAndSeventh: guides.length === 2 && chord.tones.length >= 4 ? guides : null,
  }
}
