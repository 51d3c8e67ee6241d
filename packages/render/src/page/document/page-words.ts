import type { Effort, LoopReason, PracticeLoop } from '@barwise/parser'
import type { LegendWords } from '../../strip/legend.ts'
import type { GripString } from './grip-strings.ts'
import type { QuietStrings } from './quiet-strings.ts'
import type { TempoMark } from './tempo-mark.ts'

/** The chord symbols that begin in a bar; null is "no chord". */
export interface BarChords {
  readonly bar: number
  readonly symbols: readonly (string | null)[]
}

/** What is said of a part beside its name: how many bars, and how they are repeated. */
export interface AboutPart {
  /** Numbered bars. */
  readonly bars: number
  readonly pickup: boolean
  /** How often the whole part is played, null when no repeat spans it all; whether its endings differ. */
  readonly whole: { readonly times: number; readonly endings: boolean } | null
  /** Repeats of stretches, endings included: the first two. Empty where the whole part is repeated. */
  readonly repeats: readonly { readonly from: number; readonly to: number; readonly times: number }[]
}

/** The words that the page itself speaks, in one language. Numbers and names are handed in; nothing is glued outside. */
export interface PageWords {
  /** The primary tag of the language. */
  readonly language: string
  readonly barByBar: (part: string | null) => string
  readonly practicePlan: (part: string | null) => string
  readonly form: string
  readonly answers: string
  /** The heading over the answers of one lesson of a book. */
  readonly answersOf: (lesson: string) => string
  readonly answer: (number: number) => string
  readonly answerNote: (number: number) => string
  readonly teacher: string
  readonly care: string
  readonly careNote: string
  readonly contents: string
  /** A tempo to be read aloud: "92 quarter notes a minute", with the tempo to reach when there is one. */
  readonly tempo: (tempo: TempoMark) => string
  /** The tempo to reach, behind the one to start with: "to 84". */
  readonly upTo: (bpm: number) => string
  readonly key: (tonic: string, mode: 'major' | 'minor') => string
  readonly feel: (feel: 'swing 8' | 'swing 16') => string
  /** Note letters with true signs, the string next to the thumb first. */
  readonly tuning: (strings: readonly string[]) => string
  readonly capo: (fret: number, sounds: { readonly tonic: string; readonly mode: 'major' | 'minor' } | null) => string
  readonly touch: (touch: 'light' | 'full') => string
  readonly instrument: (name: 'guitar' | 'bass' | 'ukulele') => string
  /**
   * The letter of the note B natural where notes are named, as under a grid: German calls it H. Chord symbols are never put
   * through this: they are international and stay as written.
   */
  readonly bNatural: 'B' | 'H'
  /** How chord symbols on B or B flat are read where the language has other names for those notes; null where it has not. */
  readonly symbolsOnB: (used: { readonly natural: boolean; readonly flat: boolean }) => string | null
  /** Inside a sentence: "bar 1", "bars 1–4", and the pickup, which is bar 0. */
  readonly bar: (from: number, to: number) => string
  /** At the start of a sentence or as a name, as in "Bars 1, 2 and 5"; the pickup, 0, only ever comes alone. */
  readonly barList: (numbers: readonly number[]) => string
  /** A part's form beside its name. Starts small, no full stop. */
  readonly about: (part: AboutPart) => string
  /** Pairs that never break: a word before a number. */
  readonly keepsWithNumber: RegExp
  readonly quotes: readonly [open: string, close: string, singleOpen: string, singleClose: string]
  /** How to sit down to it: warm up, how long. */
  readonly warmUp: (minutes: number) => string
  readonly ladder: string
  readonly ladderHow: string
  readonly looping: string
  /** "Bar 2, beats 3–4". */
  readonly loopPlace: (loop: PracticeLoop) => string
  /** One sentence on why it is worth looping. */
  readonly loopReason: (reason: LoopReason) => string
  readonly edition: (text: string) => string
  readonly licence: (text: string) => string
  readonly author: (name: string) => string
  readonly times: (count: number) => string
  readonly blank: (bars: number) => string
  readonly implies: (symbol: string) => string
  /** How much a bar asks of both hands: "effort 2 of 4". */
  readonly effort: (effort: Effort) => string
  /** A sentence on the finger that keeps strings quiet. */
  readonly quiet: (strings: QuietStrings) => string
  /** A sentence on the string at which a stroke begins. */
  readonly strokeFrom: (string: number) => string
  /** What the signs of the strum strip mean. */
  readonly legend: LegendWords
  /** A chord grid for those who do not see it, string by string from the one next to the thumb. */
  readonly grid: (name: string, strings: readonly GripString[]) => string
  /** Staves for those who do not see them: which bars of which part, and their chords. */
  readonly systems: (
    part: string,
    bars: { readonly from: number; readonly to: number },
    chords: readonly BarChords[],
  ) => string
}
