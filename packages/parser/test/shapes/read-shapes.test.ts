import { describe, expect, it } from 'vitest'
import { readLesson } from '../../src/read-lesson.ts'
import { isShapeName } from '../../src/shapes/shape-name.ts'
import { readMarked } from '../marked-lesson.ts'

const wrap = (lines: string, settings = ''): string => `---\ntitle: Tag\n${settings}---\n\n:::shapes\n${lines}\n:::\n`
const shapesOf = (lines: string) => readLesson({ path: 'l.md', text: wrap(lines) }).lesson.shapes

describe('shape names', () => {
  it('are what chord symbols and their variants look like', () => {
    const good = ['Em7', 'Em7.open', 'A7(b9,13)', 'C/E', 'F#m7b5', 'B°7', 'Cø', 'CΔ', 'E7-shape', 'C+', 'Csus4.2']
    const bad = ['x', 'X', '7', '.open', 'Em7.', 'C+10', 'A,B', 'Em7@1', 'E_', 'Ä', '']
    expect(good.filter((name) => !isShapeName(name))).toEqual([])
    expect(bad.filter(isShapeName)).toEqual([])
  })
})

describe('a shape line', () => {
  it('is read from the thick string and kept from the thin one', () => {
    expect(shapesOf('A9 x 12 11 12 12 12 fingers x 2 1 3 3 3')).toMatchObject([
      {
        name: 'A9',
        frets: [12, 12, 12, 11, 12, null],
        fingers: [3, 3, 3, 1, 2, null],
        fingersGiven: true,
        label: 'A9',
        implied: false,
        written: ['E6', 'B5', 'G5', 'C#5', 'A4', null],
      },
    ])
  })

  it('takes its label from the name up to a dot, from `chord`, or from `implies`', () => {
    const shapes = shapesOf(
      'Em7.open x 7 7 7 7 x implies Em7\nA.two 5 x x x x x chord Am7/C\nStab x 1 1 1 1 x\nD.5 x 5 7 7 x x',
    )
    expect(shapes.map(({ label, implied }) => [label, implied])).toEqual([
      ['Em7', true],
      ['Am7/C', false],
      [null, false],
      ['D', false],
    ])
  })

  it('is read with signs of a word processor', () => {
    expect(shapesOf('B♭ × 1 3 3 3 1')[0]).toMatchObject({ name: 'Bb', frets: [1, 3, 3, 3, 1, null] })
  })

  const MARKED: Readonly<Record<string, string>> = {
    'too few frets': 'C ⟦wrong-string-count:3 2 0 1 0⟧',
    'no frets': '⟦wrong-string-count:C⟧',
    'frets without spaces': 'C ⟦wrong-string-count:x32010⟧',
    'every wrong fret': 'C x ⟦fret-out-of-range:23⟧ 2 0 ⟦fret-out-of-range:1.5⟧ 0',
    'a word that is misspelt': 'C x 3 2 0 1 0 ⟦unreadable-shape:finger⟧ x 3 2 x 1 x',
    'a finger too few': 'C x 3 2 0 1 0 fingers ⟦wrong-finger-count:x 3 2 x 1⟧ chord C',
    'fingers without any': 'C x 3 2 0 1 0 ⟦wrong-finger-count:fingers⟧',
    'a fifth finger': 'C x 3 2 0 1 0 fingers x ⟦bad-finger:5⟧ 2 x 1 x',
    'a finger on an open string': 'C x 3 2 0 1 0 fingers x 3 2 ⟦finger-on-unfretted-string:4⟧ 1 x',
    'a name given twice': 'C x 3 2 0 1 0\n⟦duplicate-shape:C⟧ 8 10 10 9 8 8',
    'a name that starts with a digit': '⟦bad-shape-name:7C⟧ x 3 2 0 1 0',
    'two labels': 'C x 3 2 0 1 0 chord C ⟦unreadable-shape:implies⟧ Am',
  }
  for (const [title, marked] of Object.entries(MARKED)) {
    it(`reports ${title} at its place, once`, () => {
      const { expected, found } = readMarked(wrap(marked))
      expect(found).toEqual(expected)
    })
  }

  it('has as many frets as the instrument has strings, up to the last one above the capo', () => {
    const { expected, found } = readMarked(wrap('C7 0 0 0 ⟦fret-out-of-range:14⟧', 'instrument: ukulele\ncapo: 2\n'))
    expect(found).toEqual(expected)
  })
})

describe('one slip in a shape line', () => {
  it.each([
    ['C ⟦wrong-string-count:x32010⟧', 'write `x 3 2 0 1 0`'],
    ['⟦bad-shape-name:C:⟧ x 3 2 0 1 0', 'write `C`'],
    ['C x 3 2 0 1 0 ⟦unreadable-shape:fingers:⟧ x 3 2 0 1 0', 'write `fingers`'],
    ['D ⟦capital-x:X⟧ X 0 2 3 2', 'write `x`'],
    ['C x 3 2 0 1 ⟦fret-out-of-range:30⟧ fingers x 3 2 0 1 4', /^write a fret from 0 to 22/],
  ])('is one finding with its mend: %s', (line, help) => {
    const { expected, found, findings } = readMarked(wrap(line))
    expect(found).toEqual(expected)
    expect(findings[0]?.help).toMatch(help)
  })
  it('in a name is mended for the strokes on it', () => {
    const part = '\n:::part{#a grid=4 time=1/4}\nbar 1\n  1: C\n:::\n'
    const { expected, found } = readMarked(wrap('⟦bad-shape-name:C:⟧ x 3 2 0 1 0') + part)
    expect(found).toEqual(expected)
  })
})
