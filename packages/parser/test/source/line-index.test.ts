import { describe, expect, it } from 'vitest'
import { foldSigns } from '../../src/source/fold-signs.ts'
import { createLineIndex } from '../../src/source/line-index.ts'

describe('the line index', () => {
  const text = 'a\r\nbc\rd\n\ne'
  const index = createLineIndex(text)

  it('counts lines by line feeds, carriage returns, and both together', () => {
    expect(index.lineCount).toBe(5)
    expect([1, 2, 3, 4, 5].map((line) => text.slice(index.lineSpan(line).start, index.lineSpan(line).end))).toEqual([
      'a',
      'bc',
      'd',
      '',
      'e',
    ])
  })

  it('gives line and column of an offset, those outside moved to the nearest end', () => {
    expect(index.pointAt(4)).toEqual({ line: 2, column: 2, offset: 4 })
    expect(index.pointAt(-5)).toEqual({ line: 1, column: 1, offset: 0 })
    expect(index.pointAt(99)).toEqual({ line: 5, column: 2, offset: text.length })
  })

  it('has one line for an empty text', () => {
    expect(createLineIndex('').lineCount).toBe(1)
    expect(createLineIndex('').lineSpan(3)).toEqual({ start: 0, end: 0 })
  })
})

describe('folding', () => {
  it('gives plain signs without moving columns', () => {
    const typed = 'B♭ – × “two” F♯'
    expect(foldSigns(typed)).toBe('Bb - x "two" F#')
    expect(foldSigns(typed)).toHaveLength(typed.length)
  })
})
