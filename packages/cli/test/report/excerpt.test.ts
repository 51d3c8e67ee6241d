import { describe, expect, test } from 'vitest'
import { excerptOf } from '../../src/report/excerpt.ts'

const place = (line: number, column: number, endColumn: number, endLine = line) => ({
  file: 'a.md',
  line,
  column,
  endLine,
  endColumn,
})

describe('excerptOf', () => {
  test('puts the carets under the characters covered', () => {
    expect(excerptOf('a\n  2: x Em7 x\n', place(2, 6, 13), 80)).toEqual({
      number: '    2',
      line: '  2: x Em7 x',
      carets: '     ^^^^^^^',
    })
  })

  test('counts columns alike for every line ending', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const excerpt = excerptOf(`one${end}two${end}three`, place(3, 2, 4), 80)
      expect(excerpt).toEqual({ number: '    3', line: 'three', carets: ' ^^' })
    }
  })

  test('shows a tab as the spaces to the next multiple of four, and moves the carets with it', () => {
    const excerpt = excerptOf('\t2:\tx', place(1, 5, 6), 80)
    expect(excerpt?.line).toBe('    2:  x')
    expect(excerpt?.carets).toBe('        ^')
  })

  test('gives a wide character two columns and a combining mark none', () => {
    const excerpt = excerptOf('日本e\u0301x', place(1, 5, 6), 80)
    expect(excerpt?.carets).toBe('     ^')
    expect(excerptOf('日本x', place(1, 1, 3), 80)?.carets).toBe('^^^^')
    expect(excerptOf('👩‍🎤x', place(1, 6, 7), 80)?.carets).toBe('  ^')
  })

  test('gives an empty place one caret, also behind the end of the line', () => {
    expect(excerptOf('abc', place(1, 2, 2), 80)?.carets).toBe(' ^')
    expect(excerptOf('abc', place(1, 4, 4), 80)?.carets).toBe('   ^')
  })

  test('marks a place that goes on over lines to the end of its first', () => {
    expect(excerptOf('abc  \ndef', place(1, 2, 3, 2), 80)?.carets).toBe(' ^^')
  })

  test('cuts a long line around what is marked and keeps the carets right', () => {
    const line = `${'a'.repeat(300)}WRONG${'b'.repeat(300)}`
    const excerpt = excerptOf(line, place(1, 301, 306), 80)
    expect(excerpt?.line.length).toBeLessThanOrEqual(80 - 8)
    expect(excerpt?.line.slice(excerpt.carets.indexOf('^'), excerpt.carets.length)).toBe('WRONG')
  })

  test('shows control characters as pictures, so that a lesson never steers the terminal', () => {
    const excerpt = excerptOf('a\u001b[2Jb\u202ec', place(1, 6, 7), 80)
    expect(excerpt?.line).toBe('a␛[2Jb\ufffdc')
    expect(excerpt?.carets).toBe('     ^')
  })

  test('has none for a line that is not there', () => {
    expect(excerptOf('abc', place(2, 1, 2), 80)).toBeNull()
  })
})
