import { describe, expect, test } from 'vitest'
import { barresOf, gridWindow } from '../../src/grids/grid-window.ts'

// Frets and fingers are listed from string 1 upward.
describe('the frets a grid shows', () => {
  test('a shape in the first four frets hangs from the nut', () => {
    expect(gridWindow([0, 1, 0, 2, 3, null])).toEqual({ atNut: true, firstFret: 1, fretCount: 4 })
  })

  test('a shape up the neck starts at its lowest fret', () => {
    expect(gridWindow([7, 8, 7, 9, 7, null])).toEqual({ atNut: false, firstFret: 7, fretCount: 4 })
  })

  test('open strings do not pull a grid down to the nut', () => {
    expect(gridWindow([0, 0, 8, 9, 7, 0])).toEqual({ atNut: false, firstFret: 7, fretCount: 4 })
  })

  test('a shape over six frets is six frets long', () => {
    expect(gridWindow([10, 8, 6, 5, null, null])).toEqual({ atNut: false, firstFret: 5, fretCount: 6 })
  })

  test('a shape from fret 1 past fret 4 hangs from the nut', () => {
    expect(gridWindow([5, 1, 1, 1, null, null])).toEqual({ atNut: true, firstFret: 1, fretCount: 5 })
  })

  test('open strings alone are shown on four frets at the nut', () => {
    expect(gridWindow([0, 0, 0, 0])).toEqual({ atNut: true, firstFret: 1, fretCount: 4 })
  })
})

describe('barres', () => {
  test('one finger on several strings at one fret is a barre from the outer one to the other', () => {
    expect(barresOf({ frets: [7, 8, 7, 9, 7, null], fingers: [1, 2, 1, 3, 1, null] })).toEqual([
      { finger: 1, fret: 7, lowestString: 1, highestString: 5 },
    ])
  })

  test('two fingers can lie flat at once', () => {
    expect(barresOf({ frets: [3, 3, 1, 1, 1, null], fingers: [3, 3, 1, 1, 1, null] })).toHaveLength(2)
  })

  test('unfingered dots make no barre', () => {
    expect(barresOf({ frets: [7, 7, 7], fingers: [null, null, null] })).toEqual([])
  })

  test('open strings are never part of one', () => {
    expect(barresOf({ frets: [0, 2, 2, 0], fingers: [null, 1, 1, null] })).toEqual([
      { finger: 1, fret: 2, lowestString: 2, highestString: 3 },
    ])
  })
})
