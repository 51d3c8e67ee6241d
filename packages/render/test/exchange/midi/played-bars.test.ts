import type { Part, Repeat } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { playedBars } from '../../../src/exchange/midi/played-bars.ts'
import { bar, lessonOf, rest } from '../../engrave/score-builder.ts'

function order(numbers: readonly number[], repeats: readonly Repeat[]): readonly number[] {
  const { part: first } = lessonOf([bar([rest(13440)])])
  const part: Part = { ...first, bars: numbers.map((number) => ({ ...bar([rest(13440)]), number })), repeats }
  return playedBars(part).map((played) => played.bar.number)
}

describe('the order of playing', () => {
  it('goes straight through without repeats', () => {
    expect(order([0, 1, 2], [])).toEqual([0, 1, 2])
  })

  it('plays a repeat as often as it says, and goes on after it', () => {
    expect(order([0, 1, 2, 3], [{ from: 1, to: 2, times: 3, endings: [] }])).toEqual([0, 1, 2, 1, 2, 1, 2, 3])
  })

  it('takes the ending of each time', () => {
    const endings = [
      { numbers: [1, 2], from: 2, to: 2 },
      { numbers: [3], from: 3, to: 4 },
    ]
    expect(order([1, 2, 3, 4, 5], [{ from: 1, to: 2, times: 3, endings }])).toEqual([1, 2, 1, 2, 1, 3, 4, 5])
  })

  it('takes an ending that is the whole repeat', () => {
    const endings = [
      { numbers: [1], from: 1, to: 1 },
      { numbers: [2], from: 2, to: 2 },
    ]
    expect(order([1, 2], [{ from: 1, to: 1, times: 2, endings }])).toEqual([1, 2])
  })
})
