import type { BarRange } from '@barwise/parser'

/** What a line of rhythm says where it does not simply strike. */
export type RhythmWord = 'scratch' | 'hold' | 'rest' | 'hammer' | 'pull' | 'slide'

/** The words that only the text edition speaks: they stand where the pages draw. */
export interface TextWords {
  /** How to read the grips: once, before the first. */
  readonly shapesHelp: string
  readonly fingers: (fingers: readonly string[]) => string
  /** How to read the rhythms: once, before the first; only what is used. */
  readonly rhythmHelp: (used: ReadonlySet<RhythmWord>) => string
  readonly picture: (alt: string) => string
  /** That the bars of a part stand here, and under which heading they are told. */
  readonly toldUnder: (part: string, bars: BarRange | null, heading: string) => string
  /** A sentence: the pickup is not repeated. */
  readonly pickupOnce: string
  /** One line of the form, as in "Verse, bars 1–4, twice". */
  readonly formEntry: (name: string, bars: BarRange | null, times: number) => string
  readonly answerNote: (number: number) => string
}
