import { readLesson, type Shape } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { readMarked } from '../../packages/parser/test/marked-lesson.ts'

const around = (lines: string, settings = ''): string => `---\ntitle: Tag\n${settings}---\n\n:::shapes\n${lines}\n:::\n`
const shapeOf = (line: string, settings = ''): Shape => {
  const { lesson, findings } = readLesson({ path: 'tag.md', text: around(line, settings) })
  expect(findings).toEqual([])
  return lesson.shapes[0]!
}

describe('a shape', () => {
  it('has one fret, `0` or `x` for each string, in the order of the tuning', () => {
    expect(shapeOf('C x 3 2 0 1 0').frets).toEqual([0, 1, 0, 2, 3, null])
    expect(shapeOf('C 0 0 0 3', 'instrument: ukulele\n').frets).toEqual([3, 0, 0, 0])
    expect(shapeOf('E7 0 0 2 0 1 0 0', 'tuning: B1 E2 A2 D3 G3 B3 E4\n').frets.length).toBe(7)
  })

  it('has fingers 0 to 4, T, x: 0 or x where no finger presses or none is given', () => {
    expect(shapeOf('D 2 0 0 2 3 2 fingers T 0 x 1 3 2').fingers).toEqual([2, 3, 1, null, null, 'T'])
    expect(shapeOf('D x x 4 5 6 x fingers x x 1 2 4 x').fingers).toEqual([null, 4, 2, 1, null, null])
    expect(shapeOf('C x 3 2 0 1 0')).toMatchObject({ fingersGiven: false })
  })

  it.each([
    ['its name, when that is a chord symbol', 'Em7 x 7 9 7 8 7', 'Em7', false],
    ['its name up to the first `.`', 'Em7.open.two 0 2 0 0 0 0', 'Em7', false],
    ['none, when the name is no symbol', 'Stab x 1 1 1 1 x', null, false],
    ['what `chord` says', 'Stab x 3 2 0 1 0 chord C', 'C', false],
    ['`chord` over its name', 'G.two x 3 2 0 1 0 chord C/G', 'C/G', false],
    ['what `implies` says, though the notes disagree', 'Em7.open x 7 7 7 7 x implies Em7', 'Em7', true],
    ['after the fingers', 'Stab x 3 2 0 1 0 fingers x 3 2 0 1 0 chord C', 'C', false],
  ])('has as its label %s', (_law, line, label, implied) => {
    expect(shapeOf(line)).toMatchObject({ label, implied })
  })

  it.each([
    'Em7',
    'a',
    'A#',
    'C/E',
    'A7(b9)',
    'A7(b9,13)',
    'B°7',
    'Bø',
    'CΔ7',
    'Em7.open',
    'Em7.2',
    'E-two',
    'C+',
    'Caug+',
  ])('may be called %s', (name) => {
    expect(shapeOf(`${name} x 3 2 0 1 0`).name).toBe(name)
  })

  it.each(['x', 'X', '7sus', '.a', '#A', 'C.', 'C-', 'C+9', 'A,B', 'C_', 'C@1', 'Cé'])(
    'may not be called %s',
    (name) => {
      const { expected, found } = readMarked(around(`⟦bad-shape-name:${name}⟧ x 3 2 0 1 0`))
      expect(found).toEqual(expected)
    },
  )

  it.each(['A7(b9,13)', 'C+', 'E-two', 'C/E', 'B°7', 'CΔ7', 'Em7.open'])('can be played by the name %s', (name) => {
    const part = `:::part{#tag grid=4 time=4/4}\nbar 1\n  1-4: ${name} ${name}@2-4+3@1> ${name}^+2@3,5_ .\n:::\n`
    const { lesson, findings } = readLesson({ path: 'tag.md', text: `${around(`${name} x 3 2 4 1 3`)}\n${part}` })
    expect(findings).toEqual([])
    const shapes = lesson.parts[0]!.bars[0]!.events.map((event) =>
      event.kind === 'strike' ? event.target.shape : null,
    )
    expect(shapes).toEqual([name, name, name, null])
  })

  const BAD: Readonly<Record<string, string>> = {
    'too few frets': 'C ⟦wrong-string-count:3 2 0 1 0⟧',
    'too many frets': 'C ⟦wrong-string-count:0 x 3 2 0 1 0⟧',
    'a fret past the neck': 'C x 3 2 0 1 ⟦fret-out-of-range:23⟧',
    'too few fingers': 'C x 3 2 0 1 0 fingers ⟦wrong-finger-count:x 3 2 0 1⟧',
    'a finger that is none': 'C x 3 2 0 1 0 fingers x 3 2 0 ⟦bad-finger:5⟧ 0',
    'a finger on an open string': 'C x 3 2 0 1 0 fingers x 3 2 ⟦finger-on-unfretted-string:4⟧ 1 0',
    'a finger on a silent string': 'C x 3 2 0 1 0 fingers ⟦finger-on-unfretted-string:T⟧ 3 2 0 1 0',
    'a name twice': 'C x 3 2 0 1 0\n⟦duplicate-shape:C⟧ 8 10 10 9 8 8',
  }
  it.each(Object.entries(BAD))('%s', (_law, marked) => {
    const { expected, found } = readMarked(around(marked))
    expect(found).toEqual(expected)
  })

  it('may come from the shared shape file of the book', () => {
    const text = '---\ntitle: Tag\n---\n\n:::part{#tag grid=4}\nbar 1\n  1-4: C - C -\n:::\n'
    const shapes = { path: 'shapes.md', text: ':::shapes\nC x 3 2 0 1 0\n:::\n' }
    expect(readLesson({ path: 'tag.md', text }).findings.map(({ code }) => code)).toContain('unknown-shape')
    const { lesson, findings } = readLesson({ path: 'tag.md', text }, { shapes })
    expect(findings).toEqual([])
    expect(lesson.parts[0]!.bars[0]!.events).toMatchObject([{ target: { shape: 'C' } }, { target: { shape: 'C' } }])
  })
})
