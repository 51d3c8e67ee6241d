import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { COMMON_PACE } from '../../src/hand/hand-pace.ts'
import { readLesson } from '../../src/read-lesson.ts'

const SHAPES = `Em 0 2 2 0 0 0 fingers 0 2 3 0 0 0
C#m x 4 6 6 5 4 fingers x 1 3 4 2 1`

/** What is said of changes in a part of sixteenths in 2/4 at 100. */
function said(lines: string, settings = 'tempo: 100', pace = COMMON_PACE): readonly string[] {
  const text = `---\ntitle: T\n${settings}\n---\n\n:::shapes\n${SHAPES}\n:::\n\n:::part{#p grid=16 time=2/4}\n${lines}\n:::\n`
  const source = { path: 't.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  return checkLesson(read.lesson, [source], { pace })
    .findings.filter(({ code }) => code.startsWith('change'))
    .map(({ severity, message, place }) => `${place.line} ${severity}: ${message}`)
}

test('a change that does not fit says where, which fingers, and both times', () => {
  expect(said('bar 1\n  1: Em - - Em\n  2: C#m - - -')).toEqual([
    '14 warning: the change in bar 1, beat 2 is too fast at 100: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.15 s',
  ])
})

test('a time that is the same to the hundredth of a second fits', () => {
  expect(said('bar 1\n  1: Em - Em -\n  2: C#m - - -', 'tempo: 122')).toEqual([
    '14 note: the change in bar 1, beat 2 is tight: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.25 s',
  ])
})

test('a change back at the repeat names the bar it comes from', () => {
  expect(said('bar 1\n  1: Em - - -\n  2: - - - -\nbar 2\n  1: C#m - - -\n  2: - - - C#m\nrepeat 1-2')).toEqual([
    '13 warning: the change in bar 1, beat 1, coming from bar 2 at the repeat, is too fast at 100: fingers 2 and 3 need 0.25 s and there is 0.15 s',
  ])
})

test('a goal is judged in the tempo of the lesson, whatever a bar has', () => {
  const lines = 'bar 1\n  1: Em - - -\n  2: - - - -\nfrom 2 tempo 50\nbar 2\n  1: Em - Em -\n  2: C#m - - -'
  expect(said(lines, 'tempo: 100\ngoal: 180')).toEqual([])
  expect(said(lines, 'tempo: 100\ngoal: 280')).toEqual([
    '19 warning: the change in bar 2, beat 2 fits at 50 but not at the goal of 280: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.21 s',
  ])
})

test('the changes into and out of another way to play are judged, each at its own line', () => {
  const main = 'bar 1\n  1: Em - - Em\n  2: Em - - Em'
  expect(said(`${main}\n  or 2: C#m - - -`)).toEqual([
    '15 warning: the change in bar 1, beat 2, played the other way, is too fast at 100: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.15 s',
  ])
  expect(said(`${main}\n  or 1: C#m - - C#m`)).toEqual([
    '15 warning: the change in bar 1, beat 2, coming from the other way to play, is too fast at 100: fingers 2 and 3 need 0.25 s and there is 0.15 s',
  ])
  expect(said(`${main}\n  or 2: Em - - -`)).toEqual([])
})

test('another way to play in one ending is not judged against the ending after it', () => {
  const lines = `bar 1\n  1: Em - - -\n  2: - - - -
bar 2\n  1: Em - - -\n  2: - - - Em\n  or 2: - - Em Em
bar 3\n  1: C#m - - -\n  2: - - - -
repeat 1-2\nending 1 bars 2\nending 2 bars 3`
  expect(said(lines)).toEqual([])
  expect(said(lines.split('\nrepeat')[0] ?? '')).toEqual([
    '20 warning: the change in bar 3, beat 1 is too fast at 100: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.15 s',
  ])
})

test('a change is said at the tempo it is made in, which is that of the bar before', () => {
  const lines = 'bar 1\n  1: Em - - -\n  2: - - - Em\nfrom 2 tempo 50\nbar 2\n  1: C#m - - -\n  2: - - - -'
  expect(said(lines)).toEqual([
    '17 warning: the change in bar 2, beat 1 is too fast at 100: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.15 s',
  ])
})

test('a triplet in the second half of a swung beat leaves the hand the time it is played in', () => {
  // Swung at 24, the half lasts a third of 2.5 s, and each of its three parts 0.28 s.
  const lines = 'bar 1\n  1: Em - Em -\n  2: - - (Em C#m C#m)2'
  expect(said(lines, 'tempo: 24\nfeel: swing 8')).toEqual([
    '15 note: the change in bar 1, beat 2 is tight: fingers 1, 2, 3 and 4 need 0.25 s and there is 0.28 s',
  ])
})

test('the same two grips are judged again where other fingers make them slower', () => {
  // Fret 3 to fret 6 takes the little finger in bar 1 and the third in bar 2, where the little finger has fret 8 next.
  const lines = 'bar 1 chords .\n  1: 3@4 6@3 8@3 -\n  2: - - . .\nbar 2 chords .\n  1: 8@3 3@4 6@3 8@4\n  2: - - . .'
  expect(said(lines).map((one) => one.split(': ').at(-1))).toEqual([
    'finger 4 needs 0.11 s and there is 0.15 s',
    'finger 1 needs 0.20 s and there is 0.15 s',
    'finger 3 needs 0.16 s and there is 0.15 s',
    'finger 4 needs 0.15 s and there is 0.15 s',
  ])
})

test('the pace of the hand can be set', () => {
  const lines = 'bar 1\n  1: Em - - Em\n  2: C#m - - -'
  expect(said(lines, 'tempo: 100', { settleS: 0.02, travelS: 0.03 })).toEqual([])
})
