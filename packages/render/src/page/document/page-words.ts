import type { Effort, LoopReason, PracticeLoop } from '@barwise/parser'
import type { TempoMark } from './document-block.ts'
import type { QuietStrings } from './quiet-strings.ts'

/** The words that the page itself speaks, in one language. Numbers and names are handed in; nothing is glued outside. */
export interface PageWords {
  /** The primary tag of the language. */
  readonly language: string
  readonly barByBar: (part: string | null) => string
  readonly practicePlan: (part: string | null) => string
  readonly form: string
  readonly answers: string
  readonly answer: (number: number) => string
  readonly answerNote: (number: number) => string
  readonly teacher: string
  readonly care: string
  readonly careNote: string
  readonly contents: string
  /** A tempo to be read aloud: "92 quarter notes a minute", with the tempo to reach when there is one. */
  readonly tempo: (tempo: TempoMark) => string
  readonly key: (tonic: string, mode: 'major' | 'minor') => string
  readonly feel: (feel: 'swing 8' | 'swing 16') => string
  readonly tuning: (strings: readonly string[]) => string
  readonly capo: (fret: number, sounds: { readonly tonic: string; readonly mode: 'major' | 'minor' } | null) => string
  readonly touch: (touch: 'light' | 'full') => string
  readonly instrument: (name: 'guitar' | 'bass' | 'ukulele') => string
  /** A number as words when it is small: "eight". */
  readonly number: (value: number) => string
  readonly bars: (count: number) => string
  readonly bar: (from: number, to: number) => string
  /** How often the whole part is played: "twice through". */
  readonly through: (times: number) => string
  readonly repeated: (from: number, to: number, times: number) => string
  readonly pickupOnce: string
  readonly withPickup: string
  readonly endings: string
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
  readonly sameBars: string
  readonly easier: string
  readonly edition: (text: string) => string
  readonly licence: (text: string) => string
  readonly author: (name: string) => string
  readonly page: (label: string) => string
  readonly times: (count: number) => string
  readonly blank: (bars: number) => string
  readonly implies: (symbol: string) => string
  /** How much a bar asks of both hands: "effort 2 of 4". */
  readonly effort: (effort: Effort) => string
  /** A sentence on the finger that keeps strings quiet. */
  readonly quiet: (strings: QuietStrings) => string
  /** A sentence on the string at which a stroke begins. */
  readonly strokeFrom: (string: number) => string
}
