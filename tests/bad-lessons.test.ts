import { checkLesson, readLesson } from '@barwise/parser'
import { expect, test } from 'vitest'

/** One mistake that writers make, and the code of the one finding it must give (errors and warnings; notes are left aside). */
interface BadLesson {
  readonly mistake: string
  readonly finding: string
  readonly settings?: string
  readonly shapes?: string
  readonly attributes: string
  readonly lines: string
}

const TWO = 'time=2/4'
const SHAPES = `Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1
C#m x 4 6 6 5 4 fingers x 1 3 4 2 1
Em  0 2 2 0 0 0 fingers 0 2 3 0 0 0`

const BAD: readonly BadLesson[] = [
  {
    mistake: 'a minor shape under a major name',
    finding: 'chord-contradicts',
    shapes: 'A x 0 2 2 1 0 fingers x 0 2 3 1 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: A\n  2: A',
  },
  {
    mistake: 'a seventh in the name that no string plays',
    finding: 'chord-missing-tones',
    shapes: 'G7 3 2 0 0 0 3 fingers 2 1 0 0 0 3',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: G7\n  2: G7',
  },
  {
    mistake: 'an open string left ringing that is not in the chord',
    finding: 'chord-extra-tones',
    shapes: 'D x 0 0 2 3 0 fingers x 0 0 1 3 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: D\n  2: D',
  },
  {
    mistake: 'a slash bass that is not the lowest string',
    finding: 'wrong-slash-bass',
    shapes: 'C/G x 3 2 0 1 0 fingers x 3 2 0 1 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: C/G\n  2: C/G',
  },
  {
    mistake: 'a chord symbol with a letter too many',
    finding: 'unknown-chord-symbol',
    attributes: `grid=4 ${TWO}`,
    shapes: SHAPES,
    lines: 'bar 1 chords Hm7\n  1: Em7\n  2: Em7',
  },
  {
    mistake: 'an index and little finger six frets apart at the nut',
    finding: 'stretch-not-playable',
    attributes: `grid=4 ${TWO} stroke=pluck`,
    lines: 'bar 1 chords .\n  1: 1@5(1)+6@4(4)\n  2: -',
  },
  {
    mistake: 'a spread over five frets at the nut',
    finding: 'stretch',
    attributes: `grid=4 ${TWO} stroke=pluck`,
    lines: 'bar 1 chords .\n  1: 1@5(1)+5@4(4)\n  2: -',
  },
  {
    mistake: 'a spread that fits an adult hand but not a small one',
    finding: 'stretch-not-playable',
    settings: 'hand: small',
    attributes: `grid=4 ${TWO} stroke=pluck`,
    lines: 'bar 1 chords .\n  1: 1@5(1)+5@4(4)\n  2: -',
  },
  {
    mistake: 'one finger in two places',
    finding: 'finger-on-two-frets',
    shapes: 'C x 3 2 0 1 0 fingers x 3 2 0 2 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: C\n  2: C',
  },
  {
    mistake: 'fingers written in the wrong order',
    finding: 'fingers-crossed',
    shapes: 'Am x 0 2 2 1 0 fingers x 0 1 2 3 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: Am\n  2: Am',
  },
  {
    mistake: 'a barre over an open string',
    finding: 'barre-over-lower-fret',
    shapes: 'A7 x 0 2 0 2 0 fingers x 0 1 0 1 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: A7\n  2: A7',
  },
  {
    mistake: 'five separate frets for four fingers',
    finding: 'too-many-fingers',
    attributes: `grid=4 ${TWO} stroke=pluck`,
    lines: 'bar 1 chords .\n  1: 3@6+4@5+5@4+6@3+7@2\n  2: -',
  },
  {
    mistake: 'a change that fits at the tempo but not at the goal',
    finding: 'change-too-fast-at-goal',
    settings: 'tempo: 72\ngoal: 160',
    shapes: SHAPES,
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1\n  1: Em -\n  2: Em C#m',
  },
  {
    mistake: 'a leap to the twelfth fret in one sixteenth',
    finding: 'change-too-fast',
    settings: 'tempo: 84',
    shapes: `${SHAPES}\nE.12 x x 14 13 12 12 fingers x x 3 2 1 1`,
    attributes: `grid=16 ${TWO}`,
    lines: 'bar 1\n  1: Em - - Em\n  2: E.12 - - -',
  },
  {
    mistake: 'an inner string that no finger can keep quiet',
    finding: 'cannot-damp',
    shapes: 'A7 x 0 x 0 2 0 fingers x 0 x 0 1 0',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1\n  1: A7\n  2: A7',
  },
  {
    mistake: 'a hammer-on with no finger left',
    finding: 'no-free-finger',
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1 chords .\n  1: 5@6(1)+6@5(2)+7@4(3)+8@3(4)+0@2 h:9@2\n  2: - -',
  },
  {
    mistake: 'two downs in a row at speed',
    finding: 'same-direction-run',
    settings: 'tempo: 100',
    shapes: SHAPES,
    attributes: `grid=16 ${TWO}`,
    lines: 'bar 1\n  1: Em7 d:Em7 Em7 Em7\n  2: Em7 Em7 Em7 Em7',
  },
  {
    mistake: 'sixteenths faster than most hands swing',
    finding: 'strumming-fast',
    settings: 'tempo: 152',
    shapes: SHAPES,
    attributes: `grid=16 ${TWO}`,
    lines: 'bar 1\n  1: Em7 Em7 Em7 Em7\n  2: Em7 Em7 Em7 Em7',
  },
  {
    mistake: 'sixteenths faster than any hand swings',
    finding: 'strumming-not-playable',
    settings: 'tempo: 230',
    shapes: SHAPES,
    attributes: `grid=16 ${TWO}`,
    lines: 'bar 1\n  1: Em7 Em7 Em7 Em7\n  2: Em7 Em7 Em7 Em7',
  },
  {
    mistake: 'a goal that doubles the tempo of busy sixteenths',
    finding: 'strumming-fast',
    settings: 'tempo: 80\ngoal: 150',
    shapes: SHAPES,
    attributes: `grid=16 ${TWO}`,
    lines: 'bar 1\n  1: Em7 Em7 Em7 Em7\n  2: Em7 Em7 Em7 Em7',
  },
  {
    mistake: 'a hammer-on by the finger that holds another note',
    finding: 'no-free-finger',
    shapes: 'F 1 3 3 2 1 1 fingers 1 3 4 2 1 1',
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1 chords .\n  1: F h:3@1\n  2: - -',
  },
  {
    mistake: 'a change that only fails where the repeat goes back',
    finding: 'change-too-fast',
    settings: 'tempo: 100',
    shapes: SHAPES,
    attributes: `grid=16 ${TWO}`,
    lines: 'bar 1\n  1: Em - - -\n  2: - - - -\nbar 2\n  1: C#m - - -\n  2: - - - C#m\nrepeat 1-2',
  },
  {
    mistake: 'a change that fits in straight eighths but not in swung ones',
    finding: 'change-too-fast',
    settings: 'tempo: 104\nfeel: swing 8',
    shapes: SHAPES,
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1\n  1: Em Em\n  2: C#m -',
  },
  {
    mistake: 'an upstroke on the first beat after an upstroke over the bar line',
    finding: 'same-direction-run',
    shapes: SHAPES,
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1\n  1: Em7 -\n  2: - Em7\nbar 2\n  1: u:Em7 -\n  2: - -',
  },
  {
    mistake: 'two open strings strummed without the open one between',
    finding: 'cannot-damp',
    shapes: SHAPES,
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1\n  1: Em Em@1,3\n  2: - -',
  },
  {
    mistake: 'a chord symbol one beat too early over strummed shapes',
    finding: 'chord-contradicts',
    shapes: 'G 3 2 0 0 0 3 fingers 2 1 0 0 0 3\nC x 3 2 0 1 0 fingers x 3 2 0 1 0',
    attributes: 'grid=8 time=4/4',
    lines: 'bar 1 chords G C\n  1: G G\n  2: G G\n  3: G G\n  4: G C',
  },
  {
    mistake: 'a bass line that never plays the note after the slash',
    finding: 'wrong-slash-bass',
    settings: 'instrument: bass',
    attributes: `grid=8 ${TWO}`,
    lines: 'bar 1 chords C/G\n  1: 3@3 -\n  2: 2@2 -',
  },
  {
    mistake: 'an easier way to play that is out of reach',
    finding: 'stretch-not-playable',
    attributes: `grid=4 ${TWO} stroke=pluck`,
    lines: 'bar 1 chords .\n  1: 1@5(1)\n  2: 1@5(1)\n  or 2: 1@5(1)+6@4(4)',
  },
  {
    mistake: 'a shape moved down to where the hand cannot open',
    finding: 'stretch',
    shapes: 'Wide x 8 9 11 12 x fingers x 1 2 3 4 x',
    attributes: `grid=4 ${TWO}`,
    lines: 'bar 1 chords .\n  1: Wide\n  2: Wide^-7',
  },
]

test.each(BAD)('$mistake gives $finding and nothing else', ({ finding, settings, shapes, attributes, lines }) => {
  const block = shapes === undefined ? '' : `:::shapes\n${shapes}\n:::\n\n`
  const tempo = settings?.includes('tempo:') === true ? '' : 'tempo: 60\n'
  const text = `---\ntitle: Trial\n${tempo}${settings ?? ''}\n---\n\n${block}:::part{#trial ${attributes}}\n${lines}\n:::\n`
  const source = { path: 'trial.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ code, message }) => `${code}: ${message}`)).toEqual([])
  const found = checkLesson(read.lesson!, [source]).findings.filter(({ severity }) => severity !== 'note')
  expect(
    found.map(({ code }) => code),
    found.map(({ message }) => message).join('\n'),
  ).toEqual([finding])
})
