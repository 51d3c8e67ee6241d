import { expect, test } from 'vitest'
import { trueSigns } from '../../src/drawing/true-signs.ts'

test.each([
  ['Bb', 'B♭'],
  ['F#m7', 'F♯m7'],
  ['D/F#', 'D/F♯'],
  ['C7/Bb', 'C7/B♭'],
  ['A7b9', 'A7♭9'],
  ['Bm7b5', 'Bm7♭5'],
  ['Ebb', 'E♭♭'],
  ['Em7.open', 'Em7.open'],
  ['Gsub', 'Gsub'],
])('%s is printed as %s', (written, printed) => {
  expect(trueSigns(written)).toBe(printed)
})
