import type { CodeDoc } from './code-doc.ts'
import { exampleLesson } from './example-lesson.ts'

/** Codes about the way a stroke sign is written. */
export type StrokeCode =
  | 'unknown-action'
  | 'repeated-action'
  | 'conflicting-actions'
  | 'repeated-mark'
  | 'conflicting-marks'
  | 'marks-on-nothing'
  | 'unreadable-stroke'
  | 'no-such-string'
  | 'fret-needs-string'
  | 'two-frets-one-string'
  | 'no-notes-left'
  | 'capital-x'

export const STROKE_CODES: Readonly<Record<StrokeCode, CodeDoc>> = {
  'unknown-action': {
    severity: 'error',
    says: 'A letter before the colon of a sign is no action.',
    covers: 'The letter.',
    bad: exampleLesson('bar 1', '  1: k:Em7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: d:Em7 x', '  2: x x'),
  },
  'repeated-action': {
    severity: 'error',
    says: 'An action stands twice in a sign.',
    covers: 'The letter that stands again.',
    bad: exampleLesson('bar 1', '  1: dd:Em7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: d:Em7 x', '  2: x x'),
  },
  'conflicting-actions': {
    severity: 'error',
    says: 'Actions of one sign exclude each other, or its target cannot take one.',
    covers: 'The actions.',
    bad: exampleLesson('bar 1', '  1: du:Em7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: u:Em7 x', '  2: x x'),
  },
  'repeated-mark': {
    severity: 'error',
    says: 'A mark stands twice at a sign.',
    covers: 'The mark that stands again.',
    bad: exampleLesson('bar 1', '  1: Em7>> x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7> x', '  2: x x'),
  },
  'conflicting-marks': {
    severity: 'error',
    says: 'Marks of one sign exclude each other, a scratch takes a mark it cannot have, or a short stroke is held.',
    covers: 'The marks, or the hold.',
    bad: exampleLesson('bar 1', '  1: Em7>< x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7> x', '  2: x x'),
  },
  'marks-on-nothing': {
    severity: 'error',
    says: 'A hold or a silence takes no marks.',
    covers: 'The marks.',
    bad: exampleLesson('bar 1', '  1: Em7 ->', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7> -', '  2: x x'),
  },
  'unreadable-stroke': {
    severity: 'error',
    says: 'A sign cannot be read as a stroke.',
    covers: 'The sign, or the part of it that is wrong.',
    bad: exampleLesson('bar 1', '  1: Em7^2 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7^+2 x', '  2: x x'),
  },
  'no-such-string': {
    severity: 'error',
    says: 'The instrument does not have this string.',
    covers: 'The string.',
    bad: exampleLesson('bar 1', '  1: 3@7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 3@6 x', '  2: x x'),
  },
  'fret-needs-string': {
    severity: 'error',
    says: 'A fret stands without its string.',
    covers: 'The fret.',
    bad: exampleLesson('bar 1', '  1: 12 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 12@3 x', '  2: x x'),
  },
  'two-frets-one-string': {
    severity: 'error',
    says: 'One string has two frets in the same stroke.',
    covers: 'The second note.',
    bad: exampleLesson('bar 1', '  1: 3@4+5@4 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: 3@4+5@3 x', '  2: x x'),
  },
  'no-notes-left': {
    severity: 'error',
    says: 'The strings that are named are none that the shape sounds.',
    covers: 'The sign, or the line of the copy that makes it so.',
    bad: exampleLesson('bar 1', '  1: Em7@6 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7@5 x', '  2: x x'),
  },
  'capital-x': {
    severity: 'error',
    says: 'A scratch, a dead string or a silent string is a small x.',
    covers: 'The letter.',
    bad: exampleLesson('bar 1', '  1: X x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: x x', '  2: x x'),
  },
}
