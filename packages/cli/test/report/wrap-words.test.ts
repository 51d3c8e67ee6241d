import { describe, expect, test } from 'vitest'
import { findingText } from '../../src/report/finding-text.ts'
import { wrapWords } from '../../src/report/wrap-words.ts'

describe('words on a terminal', () => {
  test('are cut at spaces, with room for what stands before the first', () => {
    expect(wrapWords('one two three', { columns: 8, first: 0 })).toEqual(['one two', 'three'])
    expect(wrapWords('one two three', { columns: 8, first: 3 })).toEqual(['one', 'two', 'three'])
    expect(wrapWords('extraordinarily long', { columns: 8, first: 0 })).toEqual(['extraordinarily', 'long'])
  })

  test('of a finding stay in one line where nobody watches, and fit a narrow terminal', () => {
    const place = { file: 'a.md', line: 1, column: 1, endLine: 1, endColumn: 2 }
    const finding = {
      code: 'bad-setting',
      severity: 'error',
      message: 'the words of this message take more than forty columns',
      help: 'write a whole number from 20 to 300, or delete the line',
      span: { start: 0, end: 1 },
      place,
      bar: null,
      related: [],
    } as const
    const output = { write: () => {}, columns: 40, paint: (_style: string, text: string) => text }
    const piped = findingText(finding, new Map(), { ...output, isTerminal: false })
    expect(piped.split('\n').length).toBe(4)
    expect(findingText(finding, new Map(), { ...output, isTerminal: true })).toBe(
      [
        'error[bad-setting] the words of this',
        '  message take more than forty columns',
        '  a.md:1:1',
        '  help: write a whole number from 20 to',
        '        300, or delete the line',
        '',
      ].join('\n'),
    )
  })
})
