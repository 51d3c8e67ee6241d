import type { Span } from '../source/span.ts'

/** A fretting finger: 1 is the index finger, 4 the little finger, T the thumb over the neck. */
export type Finger = 1 | 2 | 3 | 4 | 'T'

/** How the sounds of a shape agree with its label; the first that holds. */
export type HarmonyVerdict =
  | 'contradicts'
  | 'extra tones'
  | 'missing tones'
  | 'rootless'
  | 'omits'
  | 'omits fifth'
  | 'exact'

/** What the lowest sounding pitch is to the symbol. */
export type BassVerdict = 'root' | 'inversion' | 'slash agrees' | 'slash wrong'

/** The harmony of a shape or an event judged against a symbol. Tones are note names without octave, root first, then by degree. */
export interface Harmony {
  readonly verdict: HarmonyVerdict
  readonly bass: BassVerdict
  readonly tones: readonly string[]
}

/** A named grip. `frets`, `fingers` are listed from string 1 upward. */
export interface Shape {
  readonly name: string
  /** Fret for each string; 0 is open, null is not sounded. Counted from the capo. */
  readonly frets: readonly (number | null)[]
  /** Finger for each string, null where none presses or none is known yet. */
  readonly fingers: readonly (Finger | null)[]
  /** Whether the writer gave the fingers (else they are worked out by the checks). */
  readonly fingersGiven: boolean
  /** The chord symbol it is shown under, null when its name is no chord symbol. */
  readonly label: string | null
  /** Written with `implies`: the label stands although the notes disagree. */
  readonly implied: boolean
  /** Judged against the label; null without a label. */
  readonly harmony: Harmony | null
  /** Written pitch of each string in scientific pitch notation, null where it does not sound. */
  readonly written: readonly (string | null)[]
  /** The whole line in the file that holds it. */
  readonly span: Span
  /** The file that holds it: the lesson itself or the book's shared shape file. */
  readonly file: string
}
