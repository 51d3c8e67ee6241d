import { expect, it } from 'vitest'
import { type Cue, cuesOf, leadInTo } from '../../src/player/cues.ts'
import type { PlayBar } from '../../src/player/play-data.ts'

function beats(cues: readonly Cue[]): readonly string[] {
  return cues.flatMap((cue) => (cue.kind === 'beat' ? [`${cue.atMs} ${cue.beat}${cue.first ? '!' : ''}`] : []))
}

// 120 quarters a minute are half a second each; a pickup of one beat to a bar of four begins on beat 4.
const PICKUP: PlayBar = [0, 0, 500, 500, 120, 4, 3]
const BAR: PlayBar = [1, 500, 2000, 500, 120, 4, 0]

it('clicks every beat of a bar, the first of it higher, and those of a pickup by their place in the bar', () => {
  const cues = cuesOf({ id: 'a', title: 'A', bars: [PICKUP, BAR], strokes: [], sounds: [], events: {}, same: {} })
  expect(beats(cues)).toEqual(['0 4', '500 1!', '1000 2', '1500 3', '2000 4'])
})

it('counts a whole bar before a bar', () => {
  expect(beats(leadInTo(BAR))).toEqual(['-1500 1!', '-1000 2', '-500 3', '0 4'])
})

it('counts a whole bar before a pickup, and then the beats that are missing of its own', () => {
  expect(beats(leadInTo(PICKUP))).toEqual([
    '-3500 1!',
    '-3000 2',
    '-2500 3',
    '-2000 4',
    '-1500 1!',
    '-1000 2',
    '-500 3',
  ])
})

it('counts two dotted beats in 6/8', () => {
  // 60 dotted quarters a minute.
  expect(beats(leadInTo([1, 0, 2000, 1000, 60, 2, 0]))).toEqual(['-2000 1!', '-1000 2'])
})

it('tells events before strokes, and strokes before beats, of the same time', () => {
  const cues = cuesOf({
    id: 'a',
    title: 'A',
    bars: [[1, 0, 1000, 500, 120, 2, 0]],
    strokes: [
      [0, 0],
      [500, 0],
    ],
    sounds: [],
    events: {
      1: [
        [0, 0, '1'],
        [1680, 250, '1 &'],
        [3360, 500, '2'],
      ],
    },
    same: {},
  })
  expect(cues.map(({ kind, atMs }) => `${atMs} ${kind}`)).toEqual([
    '0 event',
    '0 stroke',
    '0 beat',
    '250 event',
    '500 event',
    '500 stroke',
    '500 beat',
  ])
})
