import { describe, expect, test } from 'vitest'
import { readMarked } from '../marked-lesson.ts'

const PART = ':::part{#verse grid=8}\nbar 1\n  1: x x\n  2: x x\n  3: x x\n:::\n'

function lesson(settings: string, part = PART): string {
  return `---\ntitle: Ferry Queue\n${settings}\n---\n\n${part}`
}

function helpOf(marked: string): readonly string[] {
  const { expected, found, findings } = readMarked(marked)
  expect(found).toEqual(expected)
  return findings.map(({ help }) => help)
}

describe('a value that is nearly right', () => {
  test.each([
    ['key: ⟦bad-setting:Em⟧', 'write `E minor`'],
    ['key: ⟦bad-setting:Gmaj⟧', 'write `G major`'],
    ['key: ⟦bad-setting:bb⟧', 'write `Bb major`'],
    ['key: ⟦bad-setting:H⟧', 'write `B major`'],
    ['key: ⟦bad-setting:fis-Moll⟧', /^write a key of at most seven sharps or flats/],
    ['tempo: ⟦bad-setting:96 bpm⟧', 'write `96`'],
    ['tempo: 96\ngoal: ⟦bad-setting:60⟧', 'write a goal above 96, or delete the line'],
    ['tempo: ⟦bad-setting:fast⟧', 'write a whole number from 20 to 300, or delete the line'],
  ])('%s is told as what it means', (setting, help) => {
    expect(helpOf(lesson(`time: 3/4\n${setting}`))).toEqual([
      typeof help === 'string' ? help : expect.stringMatching(help),
    ])
  })
})

describe('a time that cannot be read', () => {
  test.each(['time: ⟦bad-setting:3⟧', 'time: 3/4\ncount: ⟦bad-setting:2⟧', 'time: ⟦bad-setting:3/4 swing⟧'])(
    'is one finding: nothing is counted by another (%j)',
    (settings) => {
      const { expected, found } = readMarked(lesson(settings))
      expect(found).toEqual(expected)
    },
  )
  test('in the braces of a part is one finding too', () => {
    const { expected, found } = readMarked(lesson('tempo: 96', PART.replace('grid', 'time=⟦bad-attribute:3⟧ grid')))
    expect(found).toEqual(expected)
  })
})

describe('what is left out of the braces of a part', () => {
  test('an id without its `#` is told and taken', () => {
    const part = `${PART.replace('#verse', '⟦bad-attribute:verse⟧')}\n::plan{part=verse}\n`
    expect(helpOf(lesson('time: 3/4', part))).toEqual(['write `#verse`'])
  })
  test('words without quotes are shown with them', () => {
    const part = PART.replace('grid', 'title=Slow ⟦bad-attribute:verse⟧ grid')
    expect(helpOf(lesson('time: 3/4', part))).toEqual(['put the words in quotes: `title="Slow verse"`'])
  })
  test('the end of a quote is told, and what follows is read', () => {
    const part = PART.replace('#verse', '#verse title=⟦bad-attribute:"Slow verse⟧')
    expect(helpOf(lesson('time: 3/4', part))).toEqual(['close the quotes: `"Slow verse"`'])
  })
})
