import type { CodeDoc } from './code-doc.ts'

/** Codes about what the two hands can play. */
export type HandCode =
  | 'too-many-fingers'
  | 'fingers-crossed'
  | 'finger-on-two-frets'
  | 'barre-over-lower-fret'
  | 'stretch'
  | 'stretch-not-playable'
  | 'change-tight'
  | 'change-too-fast'
  | 'change-too-fast-at-goal'
  | 'no-free-finger'
  | 'cannot-damp'
  | 'against-pendulum'
  | 'same-direction-run'
  | 'strumming-fast'
  | 'strumming-not-playable'
  | 'grid-finer-than-played'

/** A lesson of one bar over the given shapes, part attributes and beat lines. */
function lesson(shapes: string, attributes: string, lines: string, settings = 'tempo: 60'): string {
  const block = shapes === '' ? '' : `:::shapes\n${shapes}\n:::\n\n`
  return `---\ntitle: Trial\n${settings}\n---\n\n${block}:::part{#trial ${attributes}}\n${lines}\n:::\n`
}

const TWO_CHORDS = 'Em x x 2 0 0 0 fingers x x 1 0 0 0\nC#m x 4 6 6 5 4 fingers x 1 3 4 2 1'
const EM_AT_7 = 'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1'
const strokes = (tempo: number, line: string): string =>
  lesson(EM_AT_7, 'grid=16 time=2/4', `bar 1\n  1: ${line}\n  2: ${line}`, `tempo: ${tempo}`)

export const HAND_CODES: Readonly<Record<HandCode, CodeDoc>> = {
  'too-many-fingers': {
    severity: 'error',
    says: 'A grip presses more places than four fingers can hold, even with barres.',
    covers: 'the shape line, or the stroke sign that makes the grip',
    bad: lesson('Gm13 3 5 4 6 5 7 implies Gm13', 'grid=4 time=2/4', 'bar 1 chords .\n  1: Gm13\n  2: -'),
    good: lesson('Gm7 3 5 3 3 3 3', 'grid=4 time=2/4', 'bar 1\n  1: Gm7\n  2: -'),
  },
  'fingers-crossed': {
    severity: 'warning',
    says: 'A higher finger presses a lower fret than the finger below it. It can be done, but hardly anybody means it.',
    covers: 'the shape line, or the stroke sign',
    bad: lesson('Am x 0 2 2 1 0 fingers x 0 1 2 3 0', 'grid=4 time=2/4', 'bar 1\n  1: Am\n  2: -'),
    good: lesson('Am x 0 2 2 1 0 fingers x 0 2 3 1 0', 'grid=4 time=2/4', 'bar 1\n  1: Am\n  2: -'),
  },
  'finger-on-two-frets': {
    severity: 'error',
    says: 'One finger is wanted on two frets at once.',
    covers: 'the shape line, or the stroke sign',
    bad: lesson('C x 3 2 0 1 0 fingers x 3 2 0 2 0', 'grid=4 time=2/4', 'bar 1\n  1: C\n  2: -'),
    good: lesson('C x 3 2 0 1 0 fingers x 3 2 0 1 0', 'grid=4 time=2/4', 'bar 1\n  1: C\n  2: -'),
  },
  'barre-over-lower-fret': {
    severity: 'error',
    says: 'A finger lies across a string that must sound open or at a lower fret, and stops it.',
    covers: 'the shape line, or the stroke sign',
    bad: lesson('A x 0 2 2 0 2 fingers x 0 1 1 0 1   implies Aadd9', 'grid=4 time=2/4', 'bar 1\n  1: A\n  2: -'),
    good: lesson('A x 0 2 2 2 0 fingers x 0 1 1 1 0', 'grid=4 time=2/4', 'bar 1\n  1: A\n  2: -'),
  },
  stretch: {
    severity: 'warning',
    says: 'Two fingers are far apart. A very hard stretch is a warning, a stretch that most hands learn is a note.',
    covers: 'the shape line, or the stroke sign',
    bad: lesson('Reach x 1 2 x x 5 fingers x 1 2 x x 4', 'grid=4 time=2/4 stroke=pluck', 'bar 1\n  1: Reach\n  2: -'),
    good: lesson('Reach x 6 7 x x 9 fingers x 1 2 x x 4', 'grid=4 time=2/4 stroke=pluck', 'bar 1\n  1: Reach\n  2: -'),
  },
  'stretch-not-playable': {
    severity: 'error',
    says: 'Two fingers are further apart than a hand can open at this place of the neck.',
    covers: 'the shape line, or the stroke sign',
    bad: lesson('Reach x 1 x x x 6 fingers x 1 x x x 4', 'grid=4 time=2/4 stroke=pluck', 'bar 1\n  1: Reach\n  2: -'),
    good: lesson('Reach x 5 x x x 8 fingers x 1 x x x 4', 'grid=4 time=2/4 stroke=pluck', 'bar 1\n  1: Reach\n  2: -'),
  },
  'change-tight': {
    severity: 'note',
    says: 'A change of grip takes more than seven tenths of the time there is for it.',
    covers: 'the stroke sign that needs the new grip',
    bad: lesson(TWO_CHORDS, 'grid=8 time=2/4', 'bar 1\n  1: Em -\n  2: Em C#m', 'tempo: 104'),
    good: lesson(TWO_CHORDS, 'grid=8 time=2/4', 'bar 1\n  1: Em -\n  2: Em C#m', 'tempo: 60'),
  },
  'change-too-fast': {
    severity: 'warning',
    says: 'A change of grip needs more time than there is, in the feel of the part and at its repeats. Over twice the time it is an error.',
    covers: 'the stroke sign that needs the new grip',
    bad: lesson(TWO_CHORDS, 'grid=16 time=2/4', 'bar 1\n  1: Em - Em C#m\n  2: - - - -', 'tempo: 80'),
    good: lesson(TWO_CHORDS, 'grid=16 time=2/4', 'bar 1\n  1: Em - - C#m\n  2: - - - -', 'tempo: 60'),
  },
  'change-too-fast-at-goal': {
    severity: 'warning',
    says: 'A change of grip fits at the tempo of the lesson but not at its goal.',
    covers: 'the stroke sign that needs the new grip',
    bad: lesson(TWO_CHORDS, 'grid=8 time=2/4', 'bar 1\n  1: Em -\n  2: Em C#m', 'tempo: 72\ngoal: 160'),
    good: lesson(TWO_CHORDS, 'grid=8 time=2/4', 'bar 1\n  1: Em -\n  2: Em C#m', 'tempo: 72\ngoal: 80'),
  },
  'no-free-finger': {
    severity: 'error',
    says: 'A hammer-on, or a pull-off to a fretted note, needs a finger, and all of them hold notes that go on; a warning where another finger could take one of them over. For a note added to a shape only a note: the hand sets its fingers anew.',
    covers: 'the stroke sign of the hammer-on, or of the shape with the added note',
    bad: lesson('', 'grid=8 time=2/4', 'bar 1 chords .\n  1: 5@6(1)+6@5(2)+7@4(3)+8@3(4)+0@2 h:9@2\n  2: - -'),
    good: lesson('', 'grid=8 time=2/4', 'bar 1 chords .\n  1: 5@3(1)+0@2 h:7@2\n  2: - -'),
  },
  'cannot-damp': {
    severity: 'warning',
    says: 'A stroke sweeps across a string that must not sound, and no finger of the shape can keep it quiet.',
    covers: 'the shape line',
    bad: lesson('A7 x 0 x 0 2 0 fingers x 0 x 0 1 0', 'grid=4 time=2/4', 'bar 1\n  1: A7\n  2: -'),
    good: lesson('D x x 0 2 3 2 fingers x x 0 1 3 2', 'grid=4 time=2/4', 'bar 1\n  1: D\n  2: -'),
  },
  'against-pendulum': {
    severity: 'note',
    says: 'A written stroke direction goes against the swing of the hand. It may be meant as an accent.',
    covers: 'the stroke sign',
    bad: strokes(60, 'Em7 - u:Em7 -').replace('  2: Em7 - u:Em7 -', '  2: - Em7 - -'),
    good: strokes(60, 'Em7 - Em7 -').replace('  2: Em7 - Em7 -', '  2: - Em7 - -'),
  },
  'same-direction-run': {
    severity: 'warning',
    says: 'Two strokes in the same direction leave the hand less than one full swing between them.',
    covers: 'the stroke sign whose direction was turned round',
    bad: strokes(60, 'Em7 d:Em7 - -').replace('  2: Em7 d:Em7 - -', '  2: - - - -'),
    good: strokes(60, 'Em7 Em7 - -'),
  },
  'strumming-fast': {
    severity: 'warning',
    says: 'The strumming hand has to swing faster than most hands can keep up.',
    covers: 'the line that opens the fastest bar',
    bad: strokes(150, 'Em7 Em7 Em7 Em7'),
    good: strokes(100, 'Em7 Em7 Em7 Em7'),
  },
  'strumming-not-playable': {
    severity: 'error',
    says: 'The strumming hand has to swing faster than the fastest one-hand tapping that has been measured in untrained hands.',
    covers: 'the line that opens the fastest bar',
    bad: strokes(220, 'Em7 Em7 Em7 Em7'),
    good: strokes(100, 'Em7 Em7 Em7 Em7'),
  },
  'grid-finer-than-played': {
    severity: 'note',
    says: 'No stroke of the part uses the finest slots of its grid, so the hand is shown busier than it is.',
    covers: 'the line that opens the first bar',
    bad: strokes(60, 'Em7 - Em7 -'),
    good: strokes(60, 'Em7 - Em7 Em7'),
  },
}
