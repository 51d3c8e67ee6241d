import { describe, expect, it } from 'vitest'
import { helpWithNames, listWithOr, nearestNames } from '../../src/finding/nearest-names.ts'

describe('nearest names', () => {
  it('are the likest first, at most three', () => {
    expect(nearestNames('temp', ['tempo', 'time', 'title', 'key'])).toEqual(['tempo', 'time'])
    expect(nearestNames('Sheets', ['cards', 'sheet', 'strip'])).toEqual(['sheet'])
  })

  it('are none when nothing is near', () => {
    expect(nearestNames('xylophone', ['key', 'feel'])).toEqual([])
  })

  it('make the help, or all names do', () => {
    expect(helpWithNames('temp', ['tempo', 'time'], 'delete it')).toBe('write `tempo` or `time`')
    expect(helpWithNames('qqqqqq', ['tempo', 'time'], 'delete it')).toBe('use one of `tempo`, `time`')
    expect(helpWithNames('qqqqqq', [], 'delete it')).toBe('delete it')
    expect(listWithOr(['a', 'b', 'c'])).toBe('a, b or c')
  })
})
