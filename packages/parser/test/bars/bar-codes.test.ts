import { describe, expect, test } from 'vitest'
import { BAR_CODES } from '../../src/finding/bar-codes.ts'
import { readGroove } from './read-groove.ts'

/** Reads the part of an example lesson under the settings that `exampleLesson` gives it. */
function codesOf(lesson: string): readonly string[] {
  const body = lesson.split(/^:::part.*\n/m)[1]?.split(/^:::\n/m)[0] ?? ''
  return readGroove(body, { grid: 8, metre: { count: 2, unit: 4 } }).findings.map((finding) => finding.code)
}

describe('the examples of the codes of a part', () => {
  for (const [code, doc] of Object.entries(BAR_CODES)) {
    test(`${code}: its bad example gives it, and nothing else`, () => {
      const codes = codesOf(doc.bad)
      if (code === 'too-many-findings') {
        expect(codes).toHaveLength(201)
        expect(codes.at(-1)).toBe(code)
      } else expect(codes).toEqual([code])
    })
    test(`${code}: its good example gives no finding`, () => {
      expect(codesOf(doc.good)).toEqual([])
    })
  }
})
