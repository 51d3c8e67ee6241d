import type { Instrument } from '../score/instrument.ts'
import type { BassVerdict, Harmony, HarmonyVerdict, Shape } from '../score/shape.ts'
import { type ChordSymbol, parseChordSymbol } from './chord-symbol.ts'
import { TONE_NAMES, type ToneName, toneAbove } from './chord-tone.ts'
import { formatNoteName, pitchClass, pitchClassOf } from './note-name.ts'
import { omissibleTones } from './omissible-tones.ts'

/** A harmony with what it rests on, for those who explain it. Note names are spelled from the chord's root. */
export interface Judgement extends Harmony {
  /** Tones of the symbol that it cannot do without and that do not sound. */
  readonly missing: readonly { readonly tone: ToneName; readonly note: string }[]
  /** Sounding notes that the symbol does not hold. */
  readonly foreign: readonly { readonly tone: ToneName; readonly note: string }[]
  /** The lowest sounding note. */
  readonly lowest: string
}

/** The name a pitch class takes above a root whose chord does not hold it, by semitones. */
const FOREIGN: readonly ToneName[] = ['1', 'b9', '9', 'b3', '3', '11', '#11', '5', 'b13', '13', 'b7', '7']

/**
 * Judges sounding notes against a chord symbol; null when nothing sounds. Pitch classes count, so names for the same
 * set (C6 and Am7, Cm6 and Am7b5, Csus2 and Gsus4) never contradict each other. The verdict is the first that holds:
 * `contradicts` (another third or seventh in place of the symbol's, another fifth in place of an altered one, or more than half of
 * the notes foreign), `extra tones`, `missing tones`, `rootless` (third and seventh sound), `omits`, `omits fifth`, `exact`.
 *
 * @param midis sounding MIDI numbers in any order, repeats allowed.
 * @example judgeHarmony([57, 61, 67, 71, 76], A9)?.verdict // 'exact'
 * @example judgeHarmony([48, 52, 55, 60], C/E)?.bass // 'slash wrong': C is the lowest
 */
export function judgeHarmony(midis: readonly number[], chord: ChordSymbol): Judgement | null {
  if (midis.length === 0) return null
  const root = pitchClassOf(chord.root)
  const bass = chord.bass === null ? null : pitchClass(pitchClassOf(chord.bass) - root)
  const lowest = pitchClass(Math.min(...midis) - root)
  const sounding = new Set(midis.map((midi) => pitchClass(midi - root)))
  const own = new Map(chord.tones.map((tone): [number, ToneName] => [tone.semitones, tone.name]).reverse())
  const foreign = [...sounding].filter((semitones) => !own.has(semitones) && semitones !== bass)
  const silent = new Set(chord.tones.filter((tone) => !sounding.has(tone.semitones)).map((tone) => tone.name))
  const missing = essentialMissing(chord, silent)
  const nameAt = (semitones: number): ToneName => own.get(semitones) ?? FOREIGN[semitones] ?? '1'
  const spelled = (tone: ToneName): { tone: ToneName; note: string } => ({
    tone,
    note: formatNoteName(toneAbove(chord.root, tone).note),
  })
  return {
    verdict: verdictOf(sounding, foreign, silent, missing),
    bass: bassVerdict(lowest, bass, own.has(lowest)),
    tones: byDegree([...sounding].map(nameAt)).map((tone) =>
      bass !== null && nameAt(bass) === tone && chord.bass ? formatNoteName(chord.bass) : spelled(tone).note,
    ),
    missing: byDegree(missing).map(spelled),
    foreign: byDegree(foreign.map(nameAt)).map(spelled),
    lowest: chord.bass !== null && lowest === bass ? formatNoteName(chord.bass) : spelled(nameAt(lowest)).note,
  }
}

/**
 * The harmony of a shape against its label, both as fingered (the capo is the nut); null without a label that is a chord symbol,
 * or when no string sounds.
 *
 * @example harmonyOf(shapeA9, guitar) // { verdict: 'exact', bass: 'root', tones: ['A', 'C#', 'E', 'G', 'B'] }
 */
export function harmonyOf(shape: Pick<Shape, 'label' | 'frets'>, instrument: Instrument): Harmony | null {
  const chord = shape.label === null ? null : parseChordSymbol(shape.label)
  const judged = chord === null ? null : judgeHarmony(fingeredMidis(shape, instrument), chord)
  return judged === null ? null : { verdict: judged.verdict, bass: judged.bass, tones: judged.tones }
}

/** The MIDI numbers of a shape as fingered (the capo is the nut, as it is for chord symbols), string 1 first. */
export function fingeredMidis(shape: Pick<Shape, 'frets'>, instrument: Instrument): readonly number[] {
  return shape.frets.flatMap((fret, index) => {
    const open = instrument.tuning[index]
    return fret === null || open === undefined ? [] : [open + fret]
  })
}

function essentialMissing(chord: ChordSymbol, silent: ReadonlySet<ToneName>): readonly ToneName[] {
  const omissible = omissibleTones(chord)
  const sounds = (name: ToneName): boolean => !silent.has(name) && chord.tones.some((tone) => tone.name === name)
  const rootless =
    chord.tones.length >= 4 && (sounds('3') || sounds('b3')) && (sounds('7') || sounds('b7') || sounds('bb7'))
  const missing = [...silent].filter((name) => !omissible.has(name) && !(name === '1' && rootless))
  const altered = (['b5', '#5', 'b9', '#9'] as const).filter(sounds)
  return chord.altered && altered.length === 0 ? [...missing, 'b9'] : missing
}

function verdictOf(
  sounding: ReadonlySet<number>,
  foreign: readonly number[],
  silent: ReadonlySet<ToneName>,
  missing: readonly ToneName[],
): HarmonyVerdict {
  const clash = CLASHES.some(([name, others]) => silent.has(name) && others.some((other) => foreign.includes(other)))
  if (clash || foreign.length * 2 > sounding.size) return 'contradicts'
  if (foreign.length > 0) return 'extra tones'
  if (missing.length > 0) return 'missing tones'
  if (silent.has('1')) return 'rootless'
  if (silent.size === 0) return 'exact'
  return silent.size === 1 && silent.has('5') ? 'omits fifth' : 'omits'
}

/** What contradicts a tone when it sounds in its place, in semitones above the root: common practice. */
const CLASHES: readonly (readonly [ToneName, readonly number[]])[] = [
  ['3', [3]],
  ['b3', [4]],
  ['7', [10]],
  ['b7', [11]],
  ['bb7', [10, 11]],
  ['b5', [7, 8]],
  ['#5', [6, 7]],
]

/** A lowest note that is no tone of a symbol without a slash counts as a wrong slash: the symbol would need one. */
function bassVerdict(lowest: number, bass: number | null, isOwn: boolean): BassVerdict {
  if (bass !== null) return lowest === bass ? 'slash agrees' : 'slash wrong'
  if (lowest === 0) return 'root'
  return isOwn ? 'inversion' : 'slash wrong'
}

function byDegree(names: readonly ToneName[]): readonly ToneName[] {
  return TONE_NAMES.filter((name) => names.includes(name))
}
