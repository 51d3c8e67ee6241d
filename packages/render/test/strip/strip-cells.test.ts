import type { Event, Strike } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import { eventHeldInto, handAt, strikeWord, stripCells } from '../../src/strip/strip-cells.ts'
import { bar, lessonOf, rest, scratch, strike } from '../engrave/score-builder.ts'

const S = 840
const EM7 = { 5: 7, 4: 9, 3: 7, 2: 8, 1: 7 }
const slots = (count: number, from = 0) =>
  Array.from({ length: count }, (_, index) => ({ at: from + index * S, ticks: S }))
const named = (event: Event, target: Partial<Strike['target']>): Event =>
  event.kind === 'strike' ? { ...event, target: { ...event.target, shape: 'Em7', ...target } } : event
const em7 = (ticks: number, options = {}) => named(strike(ticks, EM7, options), {})
const cellsOf = (events: Event[], from = 0) => {
  const { part } = lessonOf([bar(events)])
  return stripCells(part, part.bars[0]!, slots(16 - from / S, from))
}

describe('the state of a cell', () => {
  test('rings from its first slot where an event only holds what sounded before', () => {
    const held = Object.fromEntries(Object.keys(EM7).map((string) => [string, 'held' as const]))
    const cells = cellsOf([em7(2 * S, { stroke: null, from: held }), rest(14 * S)])
    expect(cells.slice(0, 2).map(({ state, sounds }) => [state, sounds])).toEqual([
      ['ring', false],
      ['ring', false],
    ])
  })

  test('follows what was written for each slot', () => {
    const cells = cellsOf([
      em7(S),
      scratch(S, [5, 4, 3]),
      em7(2 * S, { stroke: 'down' }),
      em7(S, { marks: ['short'] }),
      em7(S, { stroke: null, technique: 'hammer' }),
      em7(S, { technique: 'slide' }),
      rest(9 * S),
    ])
    expect(cells.slice(0, 9).map(({ state }) => state)).toEqual([
      'struck',
      'scratch',
      'struck',
      'ring',
      'short',
      'unstruck',
      'slid-into',
      'silence',
      'silence',
    ])
  })

  test('a held slot and a silent one sound nothing new', () => {
    const cells = cellsOf([em7(2 * S), rest(14 * S)])
    expect(cells.slice(0, 3).map(({ sounds }) => sounds)).toEqual([true, false, false])
  })

  test('the written value of a scratch leaves nothing ringing', () => {
    expect(cellsOf([scratch(2 * S, [3]), rest(14 * S)])[1]?.state).toBe('after')
  })

  test('what is held in from the bar before begins at a negative tick', () => {
    const { part } = lessonOf([bar([rest(14 * S), em7(4 * S)]), bar([rest(14 * S)], { lead: 2 * S })])
    const cells = stripCells(part, part.bars[1]!, slots(16))
    expect(cells[0]).toMatchObject({ state: 'ring', eventAt: -2 * S, sounds: false })
    expect(cells[2]).toMatchObject({ state: 'silence' })
  })

  test('is found over a bar in which nothing begins', () => {
    const { part } = lessonOf([bar([em7(40 * S)]), bar([]), bar([rest(8 * S)], { lead: 8 * S })])
    expect(eventHeldInto(part, part.bars[2]!)?.at).toBe(-32 * S)
  })
})

describe('the word in a block', () => {
  const word = (event: Event) => (event.kind === 'strike' ? strikeWord(event) : '')

  test('is empty for the whole plain shape', () => {
    expect(word(em7(S))).toBe('')
  })

  test('names the strings of a part of it', () => {
    expect(word(named(strike(S, { 3: 7, 2: 8, 1: 7 }), { only: [1, 2, 3] }))).toBe('1–3')
    expect(word(named(strike(S, { 2: 8, 1: 7 }), { only: [1, 2] }))).toBe('1·2')
    expect(word(named(strike(S, { 4: 9, 2: 8, 1: 7 }), { only: [1, 2, 4] }))).toBe('1·2·4')
  })

  test('names the strings of notes without a shape', () => {
    expect(word(strike(S, { 3: 11, 2: 10 }))).toBe('2·3')
    expect(word(strike(S, { 5: 3 }))).toBe('5')
  })

  test('tells how far the shape is moved', () => {
    expect(word(named(strike(S, EM7), { shift: -1 }))).toBe('−1')
    expect(word(named(strike(S, EM7), { shift: 2 }))).toBe('+2')
  })

  test('tells an added finger', () => {
    expect(word(named(strike(S, EM7), { added: [{ string: 1, fret: 10 }] }))).toBe('+')
  })

  test('tells the action that sounds it', () => {
    expect(word(em7(S, { stroke: null, technique: 'hammer' }))).toBe('H')
    expect(word(em7(S, { stroke: null, technique: 'pull' }))).toBe('P')
    expect(word(em7(S, { technique: 'slide' }))).toBe('sl.')
  })
})

describe('the hand', () => {
  test('goes down on even slots and up on odd ones', () => {
    const plain = bar([rest(16 * S)])
    expect([0, 1, 2, 3].map((slot) => handAt(plain, slot * S))).toEqual(['down', 'up', 'down', 'up'])
  })

  test('goes down on every quarter of a grid of quarters', () => {
    const plain = bar([rest(16 * S)], { grid: 4 })
    expect([0, 1, 2, 3].map((beat) => handAt(plain, beat * 3360))).toEqual(['down', 'down', 'down', 'down'])
  })

  test('of a pickup ends on the way a full bar ends', () => {
    const pickup = { ...bar([rest(3 * S)], { length: 3 * S }), number: 0 }
    expect([0, 1, 2].map((slot) => handAt(pickup, slot * S))).toEqual(['up', 'down', 'up'])
  })

  test('alternates by part in a triplet, starting as its first slot', () => {
    const triplet = bar([rest(16 * S)], { groups: [{ at: 3360, length: 3360, parts: 3 }] })
    expect([0, 1, 2].map((part) => handAt(triplet, 3360 + part * 1120))).toEqual(['down', 'up', 'down'])
  })

  test('strikes heavily, scratches with less, and swings past thinly', () => {
    const cells = cellsOf([em7(S, { stroke: 'down' }), scratch(S, [3], { stroke: 'up' }), rest(14 * S)])
    expect(cells.slice(0, 4).map(({ swing }) => swing)).toEqual([
      { direction: 'down', weight: 'heavy' },
      { direction: 'up', weight: 'medium' },
      { direction: 'down', weight: 'thin' },
      { direction: 'up', weight: 'thin' },
    ])
  })

  test('of a plucked part is not shown, but for brushed strokes', () => {
    const { part } = lessonOf([
      { ...bar([em7(S, { stroke: 'pluck' }), em7(S, { stroke: 'down' }), rest(14 * S)]), stroke: 'pluck' },
    ])
    const cells = stripCells(part, part.bars[0]!, slots(16))
    expect(cells.map(({ swing }) => swing !== null)).toEqual([false, true, ...Array.from({ length: 14 }, () => false)])
  })
})
