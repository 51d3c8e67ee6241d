import { describe, expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

const SHAPES = `
G  3 2 0 0 0 3
C  x 3 2 0 1 0
C/B x 2 2 0 1 0
Am x 0 2 2 1 0
D  x x 0 2 3 2
F  1 3 3 2 1 1
G.chop x x x 4 3 3`.trim()

/** The findings about harmony in a part over these shapes. */
function said(lines: string, settings = '', shapes = SHAPES, attributes = 'grid=4 time=2/4'): readonly string[] {
  const block = shapes === '' ? '' : `:::shapes\n${shapes}\n:::\n\n`
  const text = `---\ntitle: T\ntempo: 60\n${settings}---\n\n${block}:::part{#p ${attributes}}\n${lines}\n:::\n`
  const source = { path: 't.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  return checkLesson(read.lesson, [source])
    .findings.filter(({ code }) => code.startsWith('chord') || code === 'wrong-slash-bass')
    .map(({ severity, code, message }) => `${severity} ${code}: ${message}`)
}

describe('a slash symbol over strokes that reach the low strings', () => {
  test('is worth a note where none of them has its bass', () => {
    expect(said('bar 1 chords G/B\n  1: G\n  2: G')).toEqual([
      'note wrong-slash-bass: the lowest note of `G` in bar 1 is G, but the symbol G/B asks for B',
    ])
    expect(said('bar 1 chords C/B\n  1: C\n  2: C')).toHaveLength(1)
    expect(said('bar 1 chords D/F#\n  1: D\n  2: D')).toHaveLength(1)
  })

  test('is left alone where the bass is there, by shape, by an added note, or by a single note', () => {
    expect(said('bar 1 chords D/F#\n  1: D+2@6\n  2: D')).toEqual([])
    expect(said('bar 1 chords C/B\n  1: C/B\n  2: C/B')).toEqual([])
    expect(said('bar 1 chords G/B\n  1: 2@5\n  2: G@1-3')).toEqual([])
  })

  test('is left alone where a shape with the same symbol brings it, whatever the others do', () => {
    expect(said('bar 1 chords C/B\n  1: C/B\n  2: C')).toEqual([])
    expect(said('bar 1 chords C/B\n  1: C\n  2: C/B')).toEqual([])
  })

  test('is told once, not for every copy; a copy with other sounds is judged anew', () => {
    const one = 'bar 1 chords G/B\n  1: G\n  2: G\nbar 2-3 = bar 1'
    expect(said(one)).toHaveLength(1)
    expect(said(`${one}\nbar 4 = bar 1\n  1: G@1-5`)).toHaveLength(2)
    expect(said(`${one}\nbar 4 = bar 1\n  2: 2@5`)).toHaveLength(1)
  })

  test('so are other notes than those of a symbol', () => {
    expect(said('bar 1 chords Am\n  1: G\n  2: G\nbar 2-4 = bar 1').map((one) => one.split(',')[0])).toEqual([
      'warning chord-contradicts: `G` in bar 1 under the symbol Am: G',
    ])
    expect(said('bar 1 chords Am\n  1: G\n  2: G\nbar 2 chords Am\n  1: G\n  2: G')).toHaveLength(2)
  })

  test('is heard as fingered: a capo changes nothing', () => {
    expect(said('bar 1 chords D/F#\n  1: D+2@6\n  2: D', 'capo: 3\n')).toEqual([])
  })

  test('is judged by its notes first: other notes are the one finding', () => {
    expect(said('bar 1 chords G/B\n  1: Am\n  2: Am').map((one) => one.split(':')[0])).toEqual([
      'warning chord-contradicts',
    ])
  })

  test('is a warning where a bass plays', () => {
    expect(said('bar 1 chords C/G\n  1: 3@3\n  2: -', 'instrument: bass\n', '')).toEqual([
      'warning wrong-slash-bass: the lowest note in bar 1 is C, but the symbol C/G asks for G',
    ])
    expect(said('bar 1 chords C/G\n  1: 3@4\n  2: 3@3', 'instrument: bass\n', '')).toEqual([])
  })
})

describe('nothing is said of the bass', () => {
  test('under strokes on the thin strings', () => {
    expect(said('bar 1 chords F/C\n  1: F@1-4\n  2: F@1-3')).toEqual([])
    expect(said('bar 1 chords G/B\n  1: G.chop\n  2: G.chop')).toEqual([])
  })

  test('of what is played ahead for the next symbol', () => {
    expect(said('bar 1 chords G/B C\n  1: 2@5\n  2: C')).toEqual([])
    expect(said('bar 1 chords G/B\n  1: G@1-3\n  2: C\nbar 2 chords C\n  1: C\n  2: C')).toEqual([])
  })

  test('where the thickest string is not the lowest', () => {
    expect(said('bar 1 chords C/G\n  1: C\n  2: C', 'instrument: ukulele\n', 'C 0 0 0 3')).toEqual([])
  })

  test('of a symbol without a slash', () => {
    expect(said('bar 1 chords G\n  1: G+x@6\n  2: G')).toEqual([])
  })
})

test('notes that colour a chord are no fault beside the plain chord', () => {
  const shapes = 'D x x 0 2 3 2 fingers x x 0 1 3 2'
  expect(said('bar 1 chords D\n  1: D D+3@1\n  2: - D+0@1', '', shapes, 'grid=8 time=2/4')).toEqual([])
  expect(said('bar 1 chords D\n  1: D h:3@1\n  2: - -', '', shapes, 'grid=8 time=2/4')).toEqual([])
  expect(said('bar 1 chords D\n  1: D+3@1 -\n  2: D+3@1 -', '', shapes, 'grid=8 time=2/4')).toHaveLength(1)
})

test('a shape moved for most of a symbol is judged by its moved notes', () => {
  const shapes = 'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1'
  expect(said('bar 1 chords Am7\n  1: Em7^+5\n  2: Em7^+5', '', shapes)).toEqual([])
  expect(said('bar 1 chords Am7\n  1: Em7^+5\n  2: Em7^+4', '', shapes)).toHaveLength(1)
  expect(said('bar 1 chords Em7\n  1: Em7\n  2: Em7^+1', '', shapes)).toEqual([])
})
