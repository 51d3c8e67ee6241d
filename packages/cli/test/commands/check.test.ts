import { expect, test } from 'vitest'
import { findingsExit } from '../../src/commands/check.ts'

test('fails on errors always, on warnings only when strict', () => {
  expect(findingsExit(0, 0, true)).toBe(0)
  expect(findingsExit(0, 2, false)).toBe(0)
  expect(findingsExit(0, 2, true)).toBe(1)
  expect(findingsExit(1, 0, false)).toBe(1)
})
