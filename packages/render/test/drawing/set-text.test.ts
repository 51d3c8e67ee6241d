import { expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { setText } from '../../src/drawing/set-text.ts'
import { openFonts } from '../../src/fonts/font-set.ts'

const fonts = openFonts(fontBytes())
const at = { x: 100, y: 50 }

test('runs follow each other without a gap', () => {
  const { runs, measure } = setText('C♯m', at, { role: 'text', face: 'sans', size: 10 }, fonts)
  expect(runs.map(({ text }) => text)).toEqual(['C', '♯', 'm'])
  expect(runs[1]?.x).toBeCloseTo(100 + fonts.measure('sans', 10, 'C').width, 9)
  const last = runs[2]!
  expect(last.x + fonts.measure('sans', 10, 'm').width).toBeCloseTo(100 + measure.width, 9)
})

test('centred text stands half its width to the left', () => {
  const { runs, measure } = setText('23', at, { role: 'text', face: 'sans', size: 10, align: 'centre' }, fonts)
  expect(runs[0]?.x).toBeCloseTo(100 - measure.width / 2, 9)
})

test('what no face holds is named', () => {
  expect(setText('a🎸', at, { role: 'text', face: 'sans', size: 10 }, fonts).missing).toEqual(['🎸'])
})
