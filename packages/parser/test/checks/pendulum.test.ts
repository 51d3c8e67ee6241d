import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** What is said of stroke directions in a part of sixteenths in 2/4. */
function said(lines: string, attributes = 'grid=16 time=2/4'): readonly string[] {
  const shapes = 'Em 0 2 2 0 0 0 fingers 0 2 3 0 0 0\nEm7 0 2 2 0 3 0 fingers 0 1 2 0 4 0'
  const text = `---\ntitle: T\ntempo: 60\n---\n\n:::shapes\n${shapes}\n:::\n\n:::part{#p ${attributes}}\n${lines}\n:::\n`
  const source = { path: 't.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  return checkLesson(read.lesson, [source])
    .findings.filter(({ code }) => ['against-pendulum', 'same-direction-run'].includes(code))
    .map(({ code, place, bar }) => `${code} line ${place.line} bar ${bar}`)
}

// The `bar 1` line stands on line 12.
test('a direction that the hand has anyway is not judged', () => {
  expect(said('bar 1\n  1: d:Em u:Em - -\n  2: d:x u:x Em Em')).toEqual([])
})

test('a turned stroke with room around it may be an accent', () => {
  expect(said('bar 1\n  1: Em - - d:Em\n  2: - - Em Em')).toEqual(['against-pendulum line 13 bar 1'])
})

test('a turned stroke beside one in its direction leaves no swing between them', () => {
  expect(said('bar 1\n  1: Em d:Em - -\n  2: - - Em Em')).toEqual(['same-direction-run line 13 bar 1'])
})

test('a run is one finding, however long', () => {
  expect(said('bar 1\n  1: d:Em d:Em d:Em d:Em\n  2: - - Em Em')).toEqual(['same-direction-run line 13 bar 1'])
  expect(said('bar 1\n  1: Em d:Em - -\n  2: Em d:Em - -')).toHaveLength(2)
})

test('neighbours count over the bar line', () => {
  expect(said('bar 1\n  1: Em - - -\n  2: - - - d:Em\nbar 2\n  1: Em - - -\n  2: - - - Em')).toEqual([
    'same-direction-run line 14 bar 1',
  ])
})

test('a copy repeats no finding, but what is written for it is judged', () => {
  const turned = 'bar 1\n  1: Em - - d:Em\n  2: - - Em Em'
  const one = ['against-pendulum line 13 bar 1']
  expect(said(`${turned}\nbar 2 = bar 1`)).toEqual(one)
  expect(said(`${turned}\nbar 2 = bar 1 with Em7 for Em`)).toEqual(one)
  expect(said(`${turned}\nbar 2 = bar 1\n  2: Em - - u:Em\nbar 3 = bar 2\n  1: Em d:Em - -`)).toEqual([
    ...one,
    'same-direction-run line 18 bar 3',
  ])
})

test('all-down and plucked parts have no pendulum to go against', () => {
  expect(said('bar 1\n  1: Em u:Em - -\n  2: Em - Em Em', 'grid=16 time=2/4 stroke=down')).toEqual([])
  expect(said('bar 1\n  1: Em u:Em - -\n  2: Em - Em Em', 'grid=16 time=2/4 stroke=pluck')).toEqual([])
})

test('the pickup is called by its name', () => {
  const source = {
    path: 't.md',
    text: '---\ntitle: T\ntempo: 60\n---\n\n:::part{#p grid=8 time=2/4}\npickup\n  2: 0@1 d:0@1\nbar 1\n  1: - -\n  2: u:0@1 -\n:::\n',
  }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  const { findings } = checkLesson(read.lesson, [source])
  expect(findings.map(({ message }) => message)).toEqual([
    'two downstrokes in a row in the pickup leave the hand less than one full swing between them',
    'this upstroke in bar 1 falls where the hand swings down',
  ])
})

test('a long part of turned strokes is judged in one pass', () => {
  const bars = (count: number): string =>
    Array.from({ length: count }, (_, at) => `bar ${at + 1}\n  1: d:Em d:Em d:Em d:Em\n  2: d:Em d:Em d:Em d:Em`).join(
      '\n',
    )
  expect(said(bars(5000))).toEqual(['same-direction-run line 13 bar 1'])
}, 9_000)
