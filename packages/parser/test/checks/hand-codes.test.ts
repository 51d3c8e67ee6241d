import { expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { HAND_CODES, type HandCode } from '../../src/finding/hand-codes.ts'
import { readLesson } from '../../src/read-lesson.ts'

const CODES = Object.keys(HAND_CODES) as readonly HandCode[]

/** The codes a lesson gives: all that reading finds, and what the rules say above a note, or at all when `notes`. */
function codesOf(text: string, notes: boolean): readonly string[] {
  const source = { path: 'trial.md', text }
  const read = readLesson(source)
  const checked = checkLesson(read.lesson, [source]).findings
  const heard = checked.filter(({ severity }) => notes || severity !== 'note')
  return [...read.findings, ...heard].map(({ code }) => code)
}

test.each(CODES)('the bad example of %s gives exactly that finding', (code) => {
  const { bad, severity } = HAND_CODES[code]
  const found = codesOf(bad, severity === 'note').filter((one) => severity !== 'note' || one in HAND_CODES)
  expect(found).toEqual([code])
})

test.each(CODES)('the good example of %s gives none of its kind', (code) => {
  const { good, severity } = HAND_CODES[code]
  expect(codesOf(good, severity === 'note').filter((one) => one === code || severity !== 'note')).toEqual([])
})
