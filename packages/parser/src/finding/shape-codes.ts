import type { CodeDoc } from './code-doc.ts'

/** Codes about the lines of a `shapes` block and the names that point at them. */
export type ShapeCode =
  | 'bad-shape-name'
  | 'duplicate-shape'
  | 'wrong-string-count'
  | 'fret-out-of-range'
  | 'wrong-finger-count'
  | 'bad-finger'
  | 'finger-on-unfretted-string'
  | 'unreadable-shape'
  | 'unknown-shape'

const lesson = (line: string): string => `---\ntitle: Tag\n---\n\n:::shapes\n${line}\n:::\n`

export const SHAPE_CODES: Readonly<Record<ShapeCode, CodeDoc>> = {
  'bad-shape-name': {
    severity: 'error',
    says: 'The name of a shape starts with a letter and has letters, digits and signs as chord symbols have them. `x` alone is a scratch. Only a space stands between it and the frets.',
    covers: 'The name, or the sign beside it that does not belong there.',
    bad: lesson('7sus x 3 2 0 1 0'),
    good: lesson('C7sus x 3 2 0 1 0'),
  },
  'duplicate-shape': {
    severity: 'error',
    says: 'Two shapes of the lesson have the same name. The first one is used.',
    covers: 'The name where it stands again.',
    bad: lesson('C x 3 2 0 1 0\nC 8 10 10 9 8 8'),
    good: lesson('C x 3 2 0 1 0\nC.high 8 10 10 9 8 8'),
  },
  'wrong-string-count': {
    severity: 'error',
    says: 'A shape has one fret, `0` or `x` for each string of the instrument, with spaces between.',
    covers: 'The frets; the name when there are none.',
    bad: lesson('C 3 2 0 1 0'),
    good: lesson('C x 3 2 0 1 0'),
  },
  'fret-out-of-range': {
    severity: 'error',
    says: 'A fret is not on the neck (a capo takes away as many frets as it is high), or is no number. Only spaces stand between frets.',
    covers: 'The fret, or the comma behind it.',
    bad: lesson('C x 3 2 0 1 33'),
    good: lesson('C x 3 2 0 1 3'),
  },
  'wrong-finger-count': {
    severity: 'error',
    says: 'After `fingers` stands one sign for each string: a finger, or `x` where none presses.',
    covers: 'The fingers; the word `fingers` when there are none.',
    bad: lesson('C x 3 2 0 1 0 fingers 3 2 1'),
    good: lesson('C x 3 2 0 1 0 fingers x 3 2 x 1 x'),
  },
  'bad-finger': {
    severity: 'error',
    says: 'A finger is `1` to `4` (1 is the index finger), `T` for the thumb, `0` or `x` where none presses.',
    covers: 'The finger.',
    bad: lesson('C x 3 2 0 1 0 fingers x 5 2 x 1 x'),
    good: lesson('C x 3 2 0 1 0 fingers x 3 2 x 1 x'),
  },
  'finger-on-unfretted-string': {
    severity: 'error',
    says: 'A finger is given for a string that is open or silent.',
    covers: 'The finger.',
    bad: lesson('C x 3 2 0 1 0 fingers x 3 2 4 1 x'),
    good: lesson('C x 3 2 0 1 0 fingers x 3 2 x 1 x'),
  },
  'unreadable-shape': {
    severity: 'error',
    says: 'After the frets can stand `fingers`, `chord` or `implies`, each once; something else stands there.',
    covers: 'The word that cannot be read.',
    bad: lesson('C x 3 2 0 1 0 finger x 3 2 x 1 x'),
    good: lesson('C x 3 2 0 1 0 fingers x 3 2 x 1 x'),
  },
  'unknown-shape': {
    severity: 'error',
    says: 'There is no shape of that name in the lesson or in the shape file of its book.',
    covers: 'The name.',
    bad: `${lesson('C x 3 2 0 1 0')}\n::grids[G]\n`,
    good: `${lesson('C x 3 2 0 1 0')}\n::grids[C]\n`,
  },
}
