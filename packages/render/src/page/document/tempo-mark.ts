/** A note value as a tempo names its beat: the part of a whole note, and whether it is dotted. */
export interface NoteValue {
  readonly base: 1 | 2 | 4 | 8 | 16 | 32
  readonly dotted: boolean
}

/** A tempo: beats of `note` a minute, and the tempo to reach, when the writer set one. */
export interface TempoMark {
  readonly note: NoteValue
  readonly bpm: number
  readonly goalBpm: number | null
}
