import type { Bar, Event, Lesson, Part } from '@barwise/parser'
import { bar, E_MINOR, lessonOf, rest, scratch, strike } from './score-builder.ts'

const S = 840
const EM = { 5: 7, 4: 9, 3: 7, 2: 8, 1: 7 }
const A9 = { 5: 12, 4: 11, 3: 12, 2: 12, 1: 12 }
const ALL = [5, 4, 3, 2, 1]
const down = (e: Event[]): Event[] => {
  let at = 0
  return e.map((event) => {
    const stroke = (at / S) % 2 === 0 ? ('down' as const) : ('up' as const)
    at += event.duration
    return event.kind === 'rest' || event.stroke === null ? event : { ...event, stroke }
  })
}
const x = scratch(S, ALL)
const em = strike(S, EM)
const a9 = strike(S, A9)
const tail = [scratch(S, ALL), strike(S, { 3: 12, 2: 12, 1: 12 }), x, x]
const head = [em, x, x, em, x, x, strike(2 * S + S, A9), x]
const CHORDS: [number, string][] = [
  [0, 'Em7'],
  [5040, 'A9'],
]

function one(): Bar {
  return bar(down([...head, strike(S, A9, { marks: ['short'] }), x, ...tail]), { key: E_MINOR, chords: CHORDS })
}
function two(): Bar {
  const dip = strike(S, { 5: 11, 4: 10, 3: 11, 2: 11, 1: 11 })
  return bar(
    down([
      ...head,
      dip,
      a9,
      x,
      strike(S, { 3: 11, 2: 10 }),
      strike(
        S,
        { 3: 9, 2: 8 },
        { stroke: null, technique: 'slide', from: { 3: 'slid', 2: 'slid' }, fromFret: { 3: 11, 2: 10 } },
      ),
      x,
    ]),
    { key: E_MINOR, chords: CHORDS },
  )
}
const open = (): Event[] => [
  strike(S, { 5: 7, 4: 7, 3: 7, 2: 7 }),
  strike(
    S,
    { 5: 7, 4: 9, 3: 7, 2: 8 },
    {
      stroke: null,
      technique: 'hammer',
      from: { 5: 'held', 4: 'hammered', 3: 'held', 2: 'hammered' },
      fromFret: { 4: 7, 2: 7 },
    },
  ),
  x,
  em,
  x,
  strike(2 * S, EM),
]
function four(): Bar {
  return bar(
    down([
      ...open(),
      strike(3 * S, { ...EM, 2: 10 }),
      x,
      x,
      x,
      x,
      strike(2 * S, EM, { technique: 'slide', from: { 1: 'slid', 2: 'slid', 3: 'slid', 4: 'slid', 5: 'slid' } }),
    ]),
    { key: E_MINOR, chords: [[0, 'Em7']] },
  )
}
function eight(): Bar {
  return bar(
    down([
      ...open(),
      strike(S, { ...EM, 2: 10 }),
      x,
      x,
      strike(4 * S, EM, { technique: 'slide', from: { 1: 'slid', 2: 'slid', 3: 'slid', 4: 'slid', 5: 'slid' } }),
      rest(2 * S),
    ]),
    { key: E_MINOR, chords: [[0, 'Em7']] },
  )
}

/** A hand-set lesson of eight bars with a pickup, repeated: the shapes and strokes of a sixteenth-note chop. */
export function ferryQueue(): { lesson: Lesson; part: Part } {
  const pickup = bar([rest(2 * S), scratch(S, ALL), scratch(S, ALL, { stroke: 'up' })], {
    key: E_MINOR,
    length: 3360,
    firstBeat: 3,
  })
  return lessonOf([pickup, one(), two(), one(), four(), one(), two(), one(), eight()], {
    pickup: true,
    repeats: [{ from: 1, to: 8, times: 2, endings: [] }],
  })
}
