import type { CodeDoc } from './code-doc.ts'
import { exampleLesson } from './example-lesson.ts'

/** Codes about the beats of a bar. */
export type BeatCode =
  | 'wrong-slot-count'
  | 'missing-beat'
  | 'duplicate-beat'
  | 'overlapping-beats'
  | 'no-such-beat'
  | 'empty-beat'
  | 'misplaced-beat-bar'
  | 'cut-does-not-divide'
  | 'bad-alternative'
  | 'pickup-gap'
  | 'pickup-full'
  | 'split-copied-group'

export const BEAT_CODES: Readonly<Record<BeatCode, CodeDoc>> = {
  'wrong-slot-count': {
    severity: 'error',
    says: 'A beat has more or fewer signs than its grid or cut has slots.',
    covers: 'The signs.',
    bad: exampleLesson('bar 1', '  1: Em7 x x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'missing-beat': {
    severity: 'error',
    says: 'A bar lacks one or more of its beats.',
    covers: 'The line that opens the bar.',
    bad: exampleLesson('bar 1', '  1: Em7 x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'duplicate-beat': {
    severity: 'error',
    says: 'The same beat stands twice in a bar.',
    covers: 'The beat before the colon.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', '  2: A9 x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', '  or 2: A9 x'),
  },
  'overlapping-beats': {
    severity: 'error',
    says: 'A beat stands in two lines of a bar.',
    covers: 'The beats before the colon.',
    bad: exampleLesson('bar 1', '  1-2: Em7 x | x x', '  2: A9 x'),
    good: exampleLesson('bar 1', '  1-2: Em7 x | A9 x'),
  },
  'no-such-beat': {
    severity: 'error',
    says: 'The bar does not have this beat.',
    covers: 'The number of the beat, or the remark.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', '  3: x x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'empty-beat': {
    severity: 'error',
    says: 'A beat has no signs after its colon.',
    covers: 'The beat before the colon.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2:'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: - -'),
  },
  'misplaced-beat-bar': {
    severity: 'error',
    says: 'A `|` does not stand between two beats.',
    covers: 'The `|`.',
    bad: exampleLesson('bar 1', '  1-2: Em7 | x x x'),
    good: exampleLesson('bar 1', '  1-2: Em7 x | x x'),
  },
  'cut-does-not-divide': {
    severity: 'error',
    says: 'A beat cannot be cut into so many equal parts, or has more than sixteen; or the signs of a bracket cannot share its slots evenly.',
    covers: 'The beat before the colon, or the bracket.',
    bad: exampleLesson('bar 1', '  1 in 9: x x x x x x x x x', '  2: x x'),
    good: exampleLesson('bar 1', '  1 in 8: x x x x x x x x', '  2: x x'),
  },
  'bad-alternative': {
    severity: 'error',
    says: 'Another way to play must begin and end where the signs of the bar itself can be left and joined again.',
    covers: 'The line.',
    bad: exampleLesson('bar 1', '  1-2 in 1: Em7', '  or 2: x x'),
    good: exampleLesson('bar 1', '  1-2 in 1: Em7', '  or 1-2: Em7 x | x x'),
  },
  'pickup-gap': {
    severity: 'error',
    says: 'A pickup runs up to bar 1 without gaps, and a beat in it is missing.',
    covers: 'The line of the pickup.',
    bad: exampleLesson('pickup', '  1: x x', 'bar 1', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('pickup', '  2: x x', 'bar 1', '  1: Em7 x', '  2: x x'),
  },
  'pickup-full': {
    severity: 'error',
    says: 'A pickup with all its beats is a whole bar.',
    covers: 'The line of the pickup.',
    bad: exampleLesson('pickup', '  1: x x', '  2: x x', 'bar 1', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('pickup', '  2: x x', 'bar 1', '  1: Em7 x', '  2: x x'),
  },
  'split-copied-group': {
    severity: 'error',
    says: 'A beat is written again of a copied group that cannot be taken apart there.',
    covers: 'The beat before the colon.',
    bad: exampleLesson('bar 1', '  1-2 in 3: Em7 x x', 'bar 2 = bar 1', '  2: x x'),
    good: exampleLesson('bar 1', '  1-2 in 3: Em7 x x', 'bar 2 = bar 1', '  1-2 in 3: x x x'),
  },
}
