/**
 * What a page hands to its script: the words of the controls, and the parts that can be played. It is written as JSON into the page, so
 * that what repeats is told once and rows of numbers are tuples. Times are whole milliseconds at the part's own tempo.
 */
export interface PlayData {
  readonly words: PlayerWords
  readonly parts: readonly PlayPart[]
}

/** A part as played: repeats and endings played out, swing swung, every bar at its own tempo. */
export interface PlayPart {
  readonly id: string
  readonly title: string
  /** In the order of playing. */
  readonly bars: readonly PlayBar[]
  /** In order of time. */
  readonly strokes: readonly PlayStroke[]
  /** What strokes sound like, each kind once. */
  readonly sounds: readonly PlaySound[]
  /** The events of each written bar and the beats that they go on over, by its number. */
  readonly events: Readonly<Record<number, readonly PlayEvent[]>>
  /** The bar whose card tells a bar that is the same and has no card of its own, by the number of the latter. */
  readonly same: Readonly<Record<number, number>>
}

/** A bar when its turn comes: its number (0 is a pickup), and how it is counted; `missing` beats of a pickup's bar come before it. */
export type PlayBar = readonly [
  number: number,
  startMs: number,
  lengthMs: number,
  beatMs: number,
  bpm: number,
  beats: number,
  missing: number,
]

/** When a stroke begins, and its place among the sounds. */
export type PlayStroke = readonly [startMs: number, sound: number]

/**
 * The notes that one action sounds, the thickest string first. `stress` is 1 for an accent and -1 for a ghost stroke; `spreadMs` lies between
 * one string and the next, negative when the thinnest is reached first.
 */
export type PlaySound = readonly [stress: -1 | 0 | 1, spreadMs: number, ...notes: readonly PlayNote[]]

/** A string that sounds: MIDI number, how long, and the place of its touch in `TOUCHES`. */
export type PlayNote = readonly [midi: number, lengthMs: number, touch: number]

/** How a string is made to sound. `damped`: a scratch or a dead string, which has no pitch. */
export const TOUCHES = ['struck', 'legato', 'muted', 'damped'] as const
export type Touch = (typeof TOUCHES)[number]

/**
 * A moment of a bar: the event that sounds, by where it is written (ticks from the start of the bar, negative when it is held in from the bar before);
 * when the moment comes; and its count, as in `2 &`. Where an event goes on over a beat, that beat is a moment, too, and its ticks stand last.
 */
export type PlayEvent = readonly [atTicks: number, offsetMs: number, count: string, overTicks?: number]

/** What the controls say. Words in braces stand for what is put there, as in `Loop bar {bar}`. */
export interface PlayerWords {
  /** The name of the whole. */
  readonly player: string
  /** The way past the lesson for those who go by keyboard. */
  readonly skip: string
  readonly play: string
  readonly stop: string
  /** That the key Space starts and stops. */
  readonly spaceKey: string
  readonly part: string
  readonly tempo: string
  /** `{bpm} bpm`. */
  readonly bpm: string
  /** The tempo to be read aloud: `{bpm}`, `{percent}`. */
  readonly tempoAloud: string
  readonly click: string
  readonly countIn: string
  readonly loop: string
  readonly loopFrom: string
  readonly loopTo: string
  readonly scroll: string
  readonly bar: string
  readonly pickup: string
  readonly loopBar: string
  /** Said when it starts: `{part}`, `{from}`, `{to}`, `{bpm}`. */
  readonly playing: string
  readonly looping: string
  readonly stopped: string
}
