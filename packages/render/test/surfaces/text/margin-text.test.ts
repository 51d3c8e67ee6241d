import { expect, test } from 'vitest'
import { PUPIL } from '../../../src/page/edition.ts'
import { lessonText } from '../../../src/surfaces/text.ts'
import { checked, ROPE_LADDER } from '../../page/rope-ladder.ts'

const { lesson, findings } = checked(ROPE_LADDER)
const text = lessonText(lesson, { edition: { ...PUPIL, teacher: true }, findings })
const lines = text.split('\n')

test('the teacher’s text says so under its title, with the teacher’s notes', () => {
  expect(lines.slice(0, 3)).toEqual(['Rope Ladder', '===========', 'Teacher’s edition'])
  expect(text).toContain('For the teacher\n---------------\nLet them play bar 2 with one strum a beat first.')
})

test('every finding is one line: severity, what is the matter, how to mend it, code', () => {
  const notes = lines.filter((line) => /^(?:Note|Warning|Error)[:,]/.test(line))
  expect(notes.map((line) => /\(([a-z-]+)\)$/.exec(line)?.[1]).toSorted()).toEqual(
    findings.map(({ code }) => code).toSorted(),
  )
  for (const line of notes) expect(line).toMatch(/^\w+(?:, [\w, ]+)?: \S.*\. [A-Z].*\. \([a-z-]+\)$/)
})

test('a finding follows the last line of its bar, or the grips it is about', () => {
  const second = text.slice(text.indexOf('\nBar 2.'), text.indexOf('\nBar 3.'))
  expect(second).toContain('\nWarning: The change in bar 2, beat 4 is too fast')
  expect(second.trimEnd()).toMatch(/\(change-too-fast\)$/)
  expect(lines.findIndex((line) => line.startsWith('Error: Gap is out of reach'))).toBe(
    lines.findIndex((line) => line.startsWith('Am: x 0 2 2 1 0')) + 1,
  )
})

test('bars without a card are told at the end with their part', () => {
  const end = text.slice(text.indexOf('What the check noted'))
  expect(end).toContain('\nWarning, Coda: The change in bar 1, beat 1')
})

test('the pupil’s text has none of it', () => {
  expect(lessonText(lesson, { findings })).toBe(lessonText(lesson))
  expect(lessonText(lesson)).not.toMatch(/Teacher’s|one strum a beat|What the check noted/)
})
