import { describe, expect, test } from 'vitest'
import { readGroove } from './read-groove.ts'

const EIGHTHS = 'bar 1\n  1: Em7 -\n  2: Em7 x\n  3: Em7 x\n  4: - Em7'

describe('a part written for another grid', () => {
  test('is read on the grid all its beats fit, with one finding that names it', () => {
    const groove = readGroove(EIGHTHS)
    expect(groove.told).toEqual(['wrong-slot-count: Em7 -'])
    expect(groove.findings[0]?.message).toBe('beat 1 has 2 signs, a sixteenth grid needs 4')
    expect(groove.findings[0]?.help).toBe('write `grid=8` in the braces of the part: all its beats fit that')
    expect(groove.bar(1).grid).toBe(8)
    expect(readGroove(EIGHTHS, { grid: 8 }).findings).toEqual([])
  })
  test('is counted in dotted beats when all its beats fit those', () => {
    const groove = readGroove('bar 1\n  1: Em7 - x\n  2: Em7 - x\n  3: Em7 - x\n  4: x x x', {
      grid: 8,
      metre: { count: 12, unit: 8 },
    })
    expect(groove.told).toEqual(['wrong-slot-count: Em7 - x'])
    expect(groove.findings[0]?.help).toBe('write `count=4` in the braces of the part: all its beats fit that')
    expect(groove.bar(1).events.at(-1)?.kind).toBe('scratch')
  })
  test('is counted in the units of its metre when all its beats fit those, never on a grid that does not cut a beat', () => {
    const groove = readGroove('bar 1\n  1: Em7 x\n  2: Em7 -\n  3: x -\n  4: Em7 x\n  5: Em7 -\n  6: - -', {
      grid: 16,
      metre: { count: 6, unit: 8 },
      count: 2,
    })
    expect(groove.told).toEqual(['wrong-slot-count: Em7 x'])
    expect(groove.findings[0]?.help).toBe('write `count=6` in the braces of the part: all its beats fit that')
    expect(groove.bar(1).beatTicks).toBe(1680)
  })
  test('is read on the grid that nearly all its beats fit, with a finding for each that does not', () => {
    const groove = readGroove(EIGHTHS.replace('2: Em7 x', '2: Em7 x x'))
    expect(groove.told).toEqual(['wrong-slot-count: Em7 -', 'wrong-slot-count: Em7 x x'])
    expect(groove.findings[0]?.help).toBe('write `grid=8` in the braces of the part: nearly all its beats fit that')
    expect(groove.bar(1).grid).toBe(8)
  })
  test('is left on its grid while two of four beats fit no other', () => {
    const groove = readGroove(EIGHTHS.replace('2: Em7 x', '2: Em7 x x').replace('3: Em7 x', '3: x'))
    expect(groove.told).toHaveLength(4)
    expect(groove.bar(1).grid).toBe(16)
  })
  test('is left on its grid when only two beats do not fit', () => {
    const groove = readGroove('bar 1\n  1: Em7 -\n  2: Em7 x\n  3: Em7 x x x\n  4: x x x x')
    expect(groove.told).toEqual(['wrong-slot-count: Em7 -', 'wrong-slot-count: Em7 x'])
  })
})

describe('a shape that does not exist', () => {
  test('is one finding, where it is named first, and says how often it comes back', () => {
    const once = readGroove('bar 1\n  1: Bm x x x\n  2-4: - - - - - - - - - - - -')
    expect(once.findings.map(({ message }) => message)).toEqual(['there is no shape "Bm"'])
    const groove = readGroove('bar 1\n  1: Bm x Bm@1-3 Fm\n  2: Bm> x x x\n  3-4: - - - - - - - -')
    expect(groove.findings.map(({ message }) => message)).toEqual([
      'there is no shape "Bm", and 2 more times below',
      'there is no shape "Fm"',
    ])
  })
})
