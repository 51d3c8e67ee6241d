import { expect, test } from 'vitest'
import { swungTicks } from '../../src/hand/swung-time.ts'

test('the second of two swung eighths falls on the last third of the beat', () => {
  // Source: two to one is what the triplet sign at the tempo says; common practice.
  expect([0, 1680, 3360, 5040].map((at) => swungTicks(at, { feel: 'swing 8', groups: [] }))).toEqual([
    0, 2240, 3360, 5600,
  ])
})

test('swung sixteenths swing inside the eighth', () => {
  expect([840, 1680, 2520].map((at) => swungTicks(at, { feel: 'swing 16', groups: [] }))).toEqual([1120, 1680, 2800])
})

test('straight bars and tuplets stay even', () => {
  expect(swungTicks(1680, { feel: 'straight', groups: [] })).toBe(1680)
  expect(swungTicks(1120, { feel: 'swing 8', groups: [{ at: 0, length: 3360, parts: 3 }] })).toBe(1120)
})
