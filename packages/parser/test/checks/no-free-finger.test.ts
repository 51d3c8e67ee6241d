import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

/** What is said of hammer-ons in a bar of eighths over one shape. */
function said(shape: string, line: string): readonly string[] {
  const block = shape === '' ? '' : `:::shapes\n${shape}\n:::\n\n`
  const text = `---\ntitle: T\ntempo: 60\n---\n\n${block}:::part{#p grid=8 time=2/4}\nbar 1 chords .\n  1: ${line}\n  2: - -\n:::\n`
  const source = { path: 't.md', text }
  const read = readLesson(source)
  expect(read.findings.map(({ message }) => message)).toEqual([])
  return checkLesson(read.lesson, [source])
    .findings.filter(({ code }) => code === 'no-free-finger')
    .map(({ severity, message, help }) => `${severity}: ${message} (${help})`)
}

test('a finger that holds a sounding note cannot leave it for a hammer-on', () => {
  expect(said('F 1 3 3 2 1 1 fingers 1 3 4 2 1 1', 'F h:3@1')).toEqual([
    'warning: the hammer-on in bar 1 finds no free finger: finger 4 holds string 4, which goes on (finger `F` so that finger 3 holds string 4 from the start, or strike the note instead)',
  ])
})

test('a shape whose fingers are left open is fingered so that one is free', () => {
  expect(said('F 1 3 3 2 1 1', 'F h:3@1')).toEqual([])
  expect(said('F 1 3 3 2 1 1', 'F F\n  2: F F\nbar 2 chords .\n  1: F h:3@1')).toEqual([])
})

test('a hammer-on with a finger to spare is fine, and so is a pull-off to an open string', () => {
  expect(said('Em 0 2 2 0 0 0 fingers 0 2 3 0 0 0', 'Em h:2@3')).toEqual([])
  expect(said('C x 3 2 0 1 0 fingers x 3 2 0 1 0', 'C p:0@2')).toEqual([])
})

test('no fingering at all for what goes on and what is hammered is an error', () => {
  expect(said('', '5@6(1)+6@5(2)+7@4(3)+8@3(4)+0@2 h:9@2')[0]).toMatch(
    /^error: no finger is free for the hammer-on in bar 1/,
  )
})

test('a note added to a shape that needs all fingers is worth a note, once', () => {
  expect(said('A 5 7 7 6 5 5 fingers 1 3 4 2 1 1', 'A+7@2 A+7@2')).toEqual([
    'note: the added note in bar 1 finds no free finger: finger 4 holds string 4 (finger `A` so that finger 3 holds string 4 from the start, or leave a string out)',
  ])
  expect(said('A 5 7 7 6 5 5 fingers 1 3 3 2 1 1', 'A+7@2 -')).toEqual([])
  expect(said('D x x 0 2 3 2 fingers x x 0 1 3 2', 'D+3@1 -')).toEqual([])
})

test('a pull-off to a fretted note needs a finger that is there before it', () => {
  expect(said('', '3@6(1)+5@5(2)+6@4(3)+8@3(4) p:7@3')[0]).toMatch(
    /^error: no finger is free for the pull-off that follows in bar 1/,
  )
  expect(said('', '8@3(4) p:5@3(1)')).toEqual([])
})

test('a shape that leaves no finger for the note to pull off to has to be fingered anew, or from the start', () => {
  expect(said('C x 3 2 0 1 0 fingers x 3 2 0 1 0', 'C p:1@4')).toEqual([
    'note: the pull-off that follows in bar 1 finds no free finger: fingers 3, 2 and 1 hold strings 5, 4 and 2 (finger `C` so that fingers 4, 3 and 2 hold strings 5, 4 and 2 from the start, or pull off to the open string)',
  ])
  expect(said('C x 3 2 0 1 0 fingers x 4 3 0 2 0', 'C p:1@4')).toEqual([])
  expect(said('C x 3 2 0 1 0', 'C p:1@4')).toEqual([])
})

test('another way to play is held to the same', () => {
  expect(said('F 1 3 3 2 1 1 fingers 1 3 4 2 1 1', 'F -\n  or 1: F h:3@1')).toHaveLength(1)
})
