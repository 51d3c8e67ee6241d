import type { Key, SpelledPitch } from '../score/pitch.ts'
import type { ChordSymbol } from './chord-symbol.ts'
import { isSharpKey, scaleOf } from './key.ts'
import { type NoteName, nameOnSide, pitchClass, pitchClassOf } from './note-name.ts'
import { pitchNamed } from './pitch.ts'
import { noteAbove } from './tonal-door.ts'

/** What a note is spelled by. */
export interface SpellingContext {
  /** The label of the shape that is played (moved with it), else the symbol in force, else null. */
  readonly chord: ChordSymbol | null
  readonly key: Key
}

/**
 * The written pitch of a fretted note.
 *
 * @param fingeredMidi open string + fret, the capo left out: the page is written as fingered.
 * @param context the chord and key it is spelled by, and the semitones the instrument is written above its sound.
 * @example spellWritten(48, { chord: null, key: cMajor, writtenAbove: 12 }) // C4: string 5, fret 3 of a guitar
 */
export function spellWritten(
  fingeredMidi: number,
  context: SpellingContext & { readonly writtenAbove: number },
): SpelledPitch {
  const midi = fingeredMidi + context.writtenAbove
  return pitchNamed(midi, nameOf(midi, context))
}

/**
 * The name of a pitch class in its chord and key (common practice, in this order): tone of the chord by its degree above the
 * root; the slash bass as the symbol spells it; degree of the key; in minor the raised seventh and sixth; otherwise a sharp in
 * sharp keys and a flat in flat keys. A pitch class has one name in one context, so no chord mixes A# with Bb.
 *
 * @example nameOf(3, { chord: C7sharp9, key: cMinor }) // D#, although the key has Eb
 * @example nameOf(8, { chord: null, key: aMinor }) // G#, the leading tone
 */
export function nameOf(semitones: number, { chord, key }: SpellingContext): NoteName {
  const wanted = pitchClass(semitones)
  const inChord = chord?.tones.find((tone) => pitchClassOf(tone.note) === wanted)?.note
  if (inChord !== undefined) return inChord
  if (chord?.bass && pitchClassOf(chord.bass) === wanted) return chord.bass
  return namesOfKey(key).find((note) => pitchClassOf(note) === wanted) ?? nameOnSide(wanted, isSharpKey(key))
}

/** The degrees of the key; in minor also the seventh and the sixth as a melody raises them. */
function namesOfKey(key: Key): readonly NoteName[] {
  const scale = scaleOf(key)
  const tonic = scale[0]
  if (key.mode === 'major' || tonic === undefined) return scale
  const raised = [noteAbove(tonic, '7M'), noteAbove(tonic, '6M')]
  return [...scale, ...raised.filter((note) => note !== null)]
}
