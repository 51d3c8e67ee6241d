import { type NoteName, nameOnSide, pitchClassOf } from './note-name.ts'
import { noteAbove } from './tonal-door.ts'

/** A tone of a chord by its degree above the root, in the order chords are spelled. */
export type ToneName =
  | '1'
  | '2'
  | 'b3'
  | '3'
  | '4'
  | 'b5'
  | '5'
  | '#5'
  | 'b6'
  | '6'
  | 'bb7'
  | 'b7'
  | '7'
  | 'b9'
  | '9'
  | '#9'
  | '11'
  | '#11'
  | 'b13'
  | '13'

/** A tone of a chord: its degree, its distance from the root in semitones within the octave, its spelled name. */
export interface ChordTone {
  readonly name: ToneName
  readonly semitones: number
  readonly note: NoteName
}

interface ToneKind {
  readonly interval: string
  readonly semitones: number
}

/** Degrees against the major scale of the root: common practice. */
const TONES: Readonly<Record<ToneName, ToneKind>> = {
  '1': { interval: '1P', semitones: 0 },
  '2': { interval: '2M', semitones: 2 },
  b3: { interval: '3m', semitones: 3 },
  '3': { interval: '3M', semitones: 4 },
  '4': { interval: '4P', semitones: 5 },
  b5: { interval: '5d', semitones: 6 },
  '5': { interval: '5P', semitones: 7 },
  '#5': { interval: '5A', semitones: 8 },
  b6: { interval: '6m', semitones: 8 },
  '6': { interval: '6M', semitones: 9 },
  bb7: { interval: '7d', semitones: 9 },
  b7: { interval: '7m', semitones: 10 },
  '7': { interval: '7M', semitones: 11 },
  b9: { interval: '9m', semitones: 1 },
  '9': { interval: '9M', semitones: 2 },
  '#9': { interval: '9A', semitones: 3 },
  '11': { interval: '11P', semitones: 5 },
  '#11': { interval: '11A', semitones: 6 },
  b13: { interval: '13m', semitones: 8 },
  '13': { interval: '13M', semitones: 9 },
}

/** Every tone name, lowest degree first. */
export const TONE_NAMES: readonly ToneName[] = [
  ...(['1', '2', 'b3', '3', '4', 'b5', '5', '#5', 'b6', '6', 'bb7', 'b7', '7'] as const),
  ...(['b9', '9', '#9', '11', '#11', 'b13', '13'] as const),
]

/** Whether the text names a tone, as `b9` does and `b4` does not. */
export function isToneName(text: string): text is ToneName {
  return Object.hasOwn(TONES, text)
}

/**
 * A tone above a root, spelled by its degree. Where that would need three signs it takes the plainest name.
 *
 * @example toneAbove({ letter: 'C', alter: 0 }, '#9').note // D#
 */
export function toneAbove(root: NoteName, name: ToneName): ChordTone {
  const { interval, semitones } = TONES[name]
  const note = noteAbove(root, interval) ?? nameOnSide(pitchClassOf(root) + semitones, root.alter > 0)
  return { name, semitones, note }
}
