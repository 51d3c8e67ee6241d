import type { Instrument } from './instrument.ts'
import type { Part, StrokeStyle, Touch } from './part.ts'
import type { Key } from './pitch.ts'
import type { Block } from './prose.ts'
import type { Shape } from './shape.ts'
import type { Feel, Metre } from './time.ts'

/** The front matter of a lesson with every default filled in. Null is "not given". */
export interface LessonSettings {
  readonly title: string
  readonly subtitle: string | null
  readonly author: string | null
  readonly level: string | null
  readonly licence: string | null
  /** A BCP 47 tag. */
  readonly language: string
  readonly tempoBpm: number
  /** The tempo to reach, in the same counts. */
  readonly goalBpm: number | null
  readonly metre: Metre
  readonly count: number | null
  readonly key: Key
  /** Whether the writer named a key (else C major is assumed and not shown). */
  readonly keyGiven: boolean
  readonly tempoGiven: boolean
  readonly feel: Feel
  readonly stroke: StrokeStyle
  readonly hand: 'adult' | 'small'
  readonly touch: Touch
  /** How sentences name strings. */
  readonly strings: 'names' | 'numbers'
  /** Codes of findings the writer has silenced for the lesson. */
  readonly accept: readonly string[]
}

/** A lesson as read: settings, the prose in order, the shapes, the parts. Plain data, serialisable as JSON. */
export interface Lesson {
  readonly kind: 'lesson'
  readonly file: string
  readonly settings: LessonSettings
  readonly instrument: Instrument
  readonly shapes: readonly Shape[]
  readonly parts: readonly Part[]
  readonly blocks: readonly Block[]
}
