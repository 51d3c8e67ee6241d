import type { CodeDoc } from './code-doc.ts'
import { exampleLesson } from './example-lesson.ts'

/** Codes about the lines of a part and its bars. */
export type LineCode =
  | 'unreadable-line'
  | 'strange-character'
  | 'beat-outside-bar'
  | 'bad-bar-number'
  | 'bar-out-of-order'
  | 'duplicate-bar'
  | 'bad-copy'
  | 'copy-of-later-bar'
  | 'copy-length'
  | 'unknown-bar'
  | 'nothing-to-replace'
  | 'bad-from'
  | 'bad-repeat'
  | 'bad-ending'
  | 'chords-off-grid'
  | 'line-too-long'
  | 'too-many-findings'

export const LINE_CODES: Readonly<Record<LineCode, CodeDoc>> = {
  'unreadable-line': {
    severity: 'error',
    says: 'The line begins with no word that a part knows and is no beat line, or what stands in it cannot be read.',
    covers: 'The line, or the words in it that are wrong.',
    bad: exampleLesson('bra 1', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'strange-character': {
    severity: 'error',
    says: 'A character only looks like one of the language: a letter of another alphabet, or one that cannot be seen. The line is read as it looks.',
    covers: 'The character.',
    bad: exampleLesson('bar 1', '  1: Em7 \u0445', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'beat-outside-bar': {
    severity: 'error',
    says: 'A beat, an `or` or a remark stands where no bar is open.',
    covers: 'The line.',
    bad: exampleLesson('1: Em7 x', 'bar 1', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'bad-bar-number': {
    severity: 'error',
    says: 'A bar has no number that can be used: bars count up from 1 to 99,999, and one line names at most 512.',
    covers: 'The number.',
    bad: exampleLesson('bar 0', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'bar-out-of-order': {
    severity: 'error',
    says: 'Bars are numbered upward without gaps, and a pickup comes first.',
    covers: 'The number.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 3 = bar 1'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1'),
  },
  'duplicate-bar': {
    severity: 'error',
    says: 'There is a bar with this number already.',
    covers: 'The number, or the line of the pickup.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 1 = bar 1'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1'),
  },
  'bad-copy': {
    severity: 'error',
    says: 'A copy does not name its bar so that it can be read, carries settings of its own, or stands under another time or grid than its source.',
    covers: 'The words that are wrong.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = 1'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1'),
  },
  'copy-of-later-bar': {
    severity: 'error',
    says: 'A copy names a bar that is not written above it.',
    covers: 'The bar that is named.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 3', 'bar 3 = bar 1'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1', 'bar 3 = bar 1'),
  },
  'copy-length': {
    severity: 'error',
    says: 'A copied run does not take its source a whole number of times.',
    covers: 'The line.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1', 'bar 3-5 = bar 1-2'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1', 'bar 3-6 = bar 1-2'),
  },
  'unknown-bar': {
    severity: 'error',
    says: 'A copy, a repeat or an ending names a bar that the part does not have.',
    covers: 'The bars that are named.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'repeat 1-2'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'repeat 1-1'),
  },
  'nothing-to-replace': {
    severity: 'error',
    says: 'Beats stand below a copied run of bars, where it is not clear which bar they would change.',
    covers: 'The beat before the colon.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2-3 = bar 1', '  2: Em7 x'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'bar 2 = bar 1', '  2: Em7 x', 'bar 3 = bar 2'),
  },
  'bad-from': {
    severity: 'error',
    says: 'A `from` line does not name the bar below it, sets nothing, or sets what cannot be read.',
    covers: 'The words that are wrong, or the line.',
    bad: exampleLesson('from 2 tempo 100', 'bar 1', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('from 1 tempo 100', 'bar 1', '  1: Em7 x', '  2: x x'),
  },
  'bad-repeat': {
    severity: 'error',
    says: 'A repeat cannot be read or overlaps another one.',
    covers: 'The line.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'repeat 1-1 times 1'),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', 'repeat 1-1 times 2'),
  },
  'bad-ending': {
    severity: 'error',
    says: 'An ending cannot be read or does not fit its repeat: the first ends where the repeat ends, each next starts right after, and they are numbered from 1 to the last time.',
    covers: 'The line.',
    bad: exampleLesson(
      'bar 1',
      '  1: Em7 x',
      '  2: x x',
      'bar 2-3 = bar 1',
      'repeat 1-2',
      'ending 1 bars 2-2',
      'ending 3 bars 3-3',
    ),
    good: exampleLesson(
      'bar 1',
      '  1: Em7 x',
      '  2: x x',
      'bar 2-3 = bar 1',
      'repeat 1-2',
      'ending 1 bars 2-2',
      'ending 2 bars 3-3',
    ),
  },
  'chords-off-grid': {
    severity: 'error',
    says: 'The entries after `chords` share the bar evenly, and each must begin on a slot of the grid. Only spaces stand between them.',
    covers: 'The entries, or the sign between two of them; the word `chords` when there are none.',
    bad: exampleLesson('bar 1 chords Em7 A9 Em7', '  1: Em7 x', '  2: x x'),
    good: exampleLesson('bar 1 chords Em7 A9', '  1: Em7 x', '  2: x x'),
  },
  'line-too-long': {
    severity: 'error',
    says: 'A line has more than 1,000 characters.',
    covers: 'What is beyond the thousandth.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', `  say: ${'a'.repeat(1000)}`),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
  'too-many-findings': {
    severity: 'error',
    says: 'A part has more than 200 findings; the rest is left out until these are mended.',
    covers: 'The first that is left out.',
    bad: exampleLesson('bar 1', '  1: Em7 x', '  2: x x', ...Array.from({ length: 201 }, () => 'repeat')),
    good: exampleLesson('bar 1', '  1: Em7 x', '  2: x x'),
  },
}
