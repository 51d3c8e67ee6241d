/** Which copy of a lesson or a book is made of the one source. The kinds combine. */
export interface Edition {
  /** Prints the teacher's notes, and beside bars and shapes what the check found there. */
  readonly teacher: boolean
  /** Chord grids mirrored for a left-handed player. Staff, tablature and steps are the same: tablature is never mirrored (common practice). */
  readonly left: boolean
  /** Large print. */
  readonly large: boolean
  /** Pure black: nothing in colour or grey. */
  readonly mono: boolean
}

/** The copy a pupil gets: none of the kinds. */
export const PUPIL: Edition = { teacher: false, left: false, large: false, mono: false }
