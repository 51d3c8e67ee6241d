import { expect, test } from 'vitest'
import { pageWords } from '../../../src/page/document/words-of-language.ts'

const CHANGE = { kind: 'change', from: 'Gbm', to: 'Gbm', fromFret: 2, toFret: 2, availableS: 0.3 } as const
const [ENGLISH, GERMAN] = [pageWords('en'), pageWords('de')]

test('fingers that move inside a shape are named, one or several, the thumb by its name', () => {
  const one = { ...CHANGE, tightest: false, within: { kind: 'fingers', fingers: [4] } } as const
  expect(ENGLISH.loopReason(one)).toBe('Finger 4 moves within G♭m in a third of a second.')
  expect(GERMAN.loopReason(one)).toBe('Finger 4 wandert in einer Drittelsekunde innerhalb von G♭m.')
  const three = { ...one, tightest: true, within: { kind: 'fingers', fingers: [2, 3, 4] } } as const
  expect(ENGLISH.loopReason(three)).toBe(
    'The tightest change: fingers 2, 3 and 4 move within G♭m in a third of a second.',
  )
  expect(GERMAN.loopReason(three)).toBe(
    'Der engste Wechsel: die Finger 2, 3 und 4 wandern in einer Drittelsekunde innerhalb von G♭m.',
  )
  const thumb = { ...one, within: { kind: 'fingers', fingers: ['T', 2] } } as const
  expect(ENGLISH.loopReason(thumb)).toBe('The thumb and finger 2 move within G♭m in a third of a second.')
  expect(GERMAN.loopReason(thumb)).toBe('Der Daumen und Finger 2 wandern in einer Drittelsekunde innerhalb von G♭m.')
})

test('a shape that is moved is told from fret to fret', () => {
  const moved = { ...CHANGE, toFret: 7, tightest: false, within: { kind: 'moved' } } as const
  expect(ENGLISH.loopReason(moved)).toBe(
    'G♭m moves from fret 2 to fret 7 in a third of a second. Look at fret 7 before you leave fret 2.',
  )
  expect(GERMAN.loopReason(moved)).toBe(
    'G♭m rückt in einer Drittelsekunde vom 2. in den 7. Bund. Schau zum 7. Bund, bevor du den 2. verlässt.',
  )
})

test('two shapes are told by their names', () => {
  const two = { ...CHANGE, to: 'C', tightest: true, within: null } as const
  expect(ENGLISH.loopReason(two)).toBe('The tightest change: from G♭m to C in a third of a second.')
  expect(GERMAN.loopReason(two)).toBe('Der engste Wechsel: von G♭m zu C in einer Drittelsekunde.')
})

test('a loop over the bar line is called by the bar it leads into', () => {
  const into = { bar: 3, fromBeat: 1, toBeat: 1, wholeBar: false, into: true, reason: { kind: 'syncopation' } } as const
  expect([ENGLISH.loopPlace(into), GERMAN.loopPlace(into)]).toEqual(['Into bar 3', 'Übergang zu Takt 3'])
  expect(ENGLISH.loopPlace({ ...into, into: false })).toBe('Bar 3, beat 1')
})
