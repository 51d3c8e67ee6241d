import { expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { chordRuns } from '../../src/engrave/chord-runs.ts'
import { openFonts } from '../../src/fonts/font-set.ts'

const fonts = openFonts(fontBytes())
const set = (symbol: string) => chordRuns(symbol, 10, fonts).runs
const texts = (symbol: string) => set(symbol).map(({ text }) => text)

test('root and minor stand on the line, the rest is raised and smaller', () => {
  const [line, raised] = set('Em7')
  expect(line).toMatchObject({ text: 'Em', y: -0, size: 10 })
  expect(raised?.size).toBeCloseTo(6.8, 9)
  expect(raised).toMatchObject({ text: '7', y: -3 })
})

test('flats and sharps are those made for chord symbols', () => {
  expect(texts('Bbmaj7(#11)')).toEqual(['B', '\uED60', 'maj7(', '\uED62', '11)'])
  expect(texts('D/F#')).toEqual(['D', '/F', '\uED62'])
})

test('a text that is no symbol is set plain', () => {
  expect(texts('N.C.')).toEqual(['N.C.'])
})

test('runs follow each other without overlap', () => {
  const { runs, width } = chordRuns('F#m7b5/E', 10, fonts)
  let end = 0
  for (const { x, face, size, text } of runs) {
    expect(x).toBeGreaterThanOrEqual(end - 1e-9)
    end = x + fonts.measure(face, size, text).width
  }
  expect(width).toBeCloseTo(end, 6)
})
