import { CODE_DOCS, CODE_GROUPS } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import { runProgram } from '../../src/program.ts'
import type { World } from '../../src/terminal/world.ts'
import { testWorld } from '../support/test-world.ts'

async function printed(columns: number, ...args: readonly string[]): Promise<string> {
  const world = testWorld()
  const narrow: World = { ...world, out: { ...world.out, columns } }
  expect(await runProgram(args, narrow)).toBe(0)
  return world.printed.out
}

describe('barwise explain', () => {
  test('lists every code once, in groups, within the lines of the terminal', async () => {
    expect(CODE_GROUPS.flatMap(({ codes }) => codes).sort()).toEqual(Object.keys(CODE_DOCS).sort())
    for (const columns of [40, 80, 120]) {
      const lines = (await printed(columns, 'explain')).split('\n').slice(2)
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(columns)
    }
    expect((await printed(100, 'explain')).split('\n').length).toBeLessThanOrEqual(70)
  })

  test('marks warnings and notes', async () => {
    const list = await printed(100, 'explain')
    expect(list).toMatch(/ fingers-crossed\*/)
    expect(list).toMatch(/ change-tight\+/)
    expect(list).toMatch(/ wrong-slot-count {2}/)
  })

  test('shows what the check says of the wrong example, and only the lines that are mended', async () => {
    const text = await printed(100, 'explain', 'wrong-slot-count')
    expect(text).toContain(
      [
        'Barwise says:',
        '  error[wrong-slot-count] beat 1 has 3 signs, an eighth grid needs 2',
        '    lesson.md:14:6',
        '     14 |   1: Em7 x x',
        '        |      ^^^^^^^',
        '    help: take one sign away, or write `1 in 3:` for a triplet',
        '',
        'Right:',
        '  …',
        '  :::part{#groove grid=8 time=2/4}',
        '  bar 1',
        '    1: Em7 x',
        '    2: x x',
        '  :::',
        '',
      ].join('\n'),
    )
  })

  test('counts like lines and cuts long ones', async () => {
    expect(await printed(100, 'explain', 'too-many-findings')).toContain('  repeat\n  … 200 more lines like this one\n')
    const long = (await printed(60, 'explain', 'line-too-long')).split('\n')
    expect(Math.max(...long.filter((line) => line.includes('aaa')).map((line) => line.length))).toBeLessThanOrEqual(60)
  })
})

test('an empty code lists all codes', async () => {
  const [empty, none] = [testWorld(), testWorld()]
  expect(await runProgram(['explain', ' '], empty)).toBe(0)
  await runProgram(['explain'], none)
  expect(empty.printed.out).toBe(none.printed.out)
})
