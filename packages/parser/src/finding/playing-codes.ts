import type { CodeDoc } from './code-doc.ts'
import { exampleLesson } from './example-lesson.ts'

/** Codes about strokes that do not fit what sounds before them. */
export type PlayingCode =
  | 'nothing-to-hold'
  | 'nothing-to-hammer'
  | 'cannot-move-open'
  | 'hammer-not-up'
  | 'pull-not-down'
  | 'slide-across-strings'
  | 'slide-same-fret'
  | 'slide-open-string'
  | 'nothing-to-slide'
  | 'hold-across-repeat'

export const PLAYING_CODES: Readonly<Record<PlayingCode, CodeDoc>> = {
  'nothing-to-hold': {
    severity: 'error',
    says: 'A hold stands where nothing sounds: at the start or after a silence.',
    covers: 'The hold.',
    bad: exampleLesson('bar 1', '  1: - x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 -', '  2: x x'),
  },
  'nothing-to-hammer': {
    severity: 'error',
    says: 'A hammer-on or pull-off finds nothing to sound from: nothing sounds on its strings, or the same frets do already.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: h:7@3 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 5@3 h:7@3', '  2: x x'),
  },
  'cannot-move-open': {
    severity: 'error',
    says: 'A shape with open strings cannot be moved, unless they are left out.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: Em^+2 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em^+2@4-5 x', '  2: x x'),
  },
  'hammer-not-up': {
    severity: 'error',
    says: 'A hammer-on goes to a higher fret.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: 7@3 h:5@3', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 7@3 p:5@3', '  2: x x'),
  },
  'pull-not-down': {
    severity: 'error',
    says: 'A pull-off goes to a lower fret.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: 5@3 p:7@3', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 5@3 h:7@3', '  2: x x'),
  },
  'slide-across-strings': {
    severity: 'error',
    says: 'A slide stays on its string, but what sounds is on another one.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: 5@3 s:7@2', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 5@3 s:7@3', '  2: x x'),
  },
  'slide-same-fret': {
    severity: 'error',
    says: 'A slide ends on the fret it starts from.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: 5@3 s:5@3', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 5@3 s:7@3', '  2: x x'),
  },
  'slide-open-string': {
    severity: 'error',
    says: 'A slide begins or ends on an open string, or below fret 1.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: 0@3 s:2@3', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 0@3 h:2@3', '  2: x x'),
  },
  'nothing-to-slide': {
    severity: 'error',
    says: 'Nothing sounds before that could slide away.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: x s:.', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 s:.', '  2: x x'),
  },
  'hold-across-repeat': {
    severity: 'error',
    says: 'A hold or an unstruck action in the first bar of a repeat finds other notes when the repeat comes back to it.',
    covers: 'The sign.',
    bad: exampleLesson('bar 1', '  1: Em7 -', '  2: - -', 'bar 2', '  1: - x', '  2: x x', 'repeat 2-2'),
    good: exampleLesson('bar 1', '  1: Em7 -', '  2: - -', 'bar 2', '  1: - x', '  2: x Em7', 'repeat 2-2'),
  },
}
