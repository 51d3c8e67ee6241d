import { describe, expect, it } from 'vitest'
import type { Bar, Group } from '../../src/score/part.ts'
import { swungAt } from '../../src/score/swing.ts'
import type { Feel, Metre } from '../../src/score/time.ts'

function feltBar(
  feel: Feel,
  metre: Metre,
  groups: readonly Group[] = [],
  number = 1,
): Pick<Bar, 'number' | 'length' | 'metre' | 'feel' | 'groups'> {
  return { length: 13440, number, metre, feel, groups }
}

const FOUR: Metre = { count: 4, unit: 4 }

// Common practice: the first of two swung eighths lasts two thirds of the beat, 2240 of 3360 ticks.
describe('when a moment is played', () => {
  it('leaves straight bars alone', () => {
    const at = swungAt(feltBar('straight', FOUR))
    expect([0, 1, 1680, 13440].map(at)).toEqual([0, 1, 1680, 13440])
  })

  it('swings eighths, and bends sixteenths with them', () => {
    const at = swungAt(feltBar('swing 8', FOUR))
    expect([0, 840, 1680, 2520, 3360, 5040, 13440].map(at)).toEqual([0, 1120, 2240, 2800, 3360, 5600, 13440])
  })

  it('swings sixteenths inside eighths that stay where they are', () => {
    const at = swungAt(feltBar('swing 16', FOUR))
    expect([0, 840, 1680, 2520, 3360].map(at)).toEqual([0, 1120, 1680, 2800, 3360])
  })

  it('plays a triplet as evenly as it is written', () => {
    const at = swungAt(feltBar('swing 8', FOUR, [{ at: 3360, length: 3360, parts: 3 }]))
    expect([1680, 3360, 4480, 5600, 6720, 8400].map(at)).toEqual([2240, 3360, 4480, 5600, 6720, 8960])
  })

  it('bends a triplet in the second half of a beat as a whole', () => {
    const at = swungAt(feltBar('swing 8', FOUR, [{ at: 1680, length: 1680, parts: 3 }]))
    expect([1680, 2240, 2800, 3360].map(at)).toEqual([2240, 2613, 2987, 3360])
  })

  it('does not swing eighths that go in threes', () => {
    const at = swungAt(feltBar('swing 8', { count: 6, unit: 8 }))
    expect([1680, 3360, 5040].map(at)).toEqual([1680, 3360, 5040])
  })

  it('counts a pickup from the end of its full bar', () => {
    const pickup = { ...feltBar('swing 8', FOUR, [], 0), length: 5040 }
    expect([0, 1680, 3360, 5040].map(swungAt(pickup))).toEqual([560, 1680, 3920, 5040])
  })
})
