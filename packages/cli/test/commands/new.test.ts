import { describe, expect, test } from 'vitest'
import { runProgram } from '../../src/program.ts'
import { testWorld } from '../support/test-world.ts'

describe('barwise new', () => {
  test('does not write a lesson that no editor would take for Markdown', async () => {
    const world = testWorld()
    expect(await runProgram(['new', 'rain.txt'], world)).toBe(2)
    expect(world.printed.err).toBe('error: a lesson is a Markdown file, not .txt\n  help: say `barwise new rain.md`\n')
  })
})

describe('what to type next', () => {
  test('is told as the caller has started the command', async () => {
    const fromClone = testWorld({ npm_lifecycle_event: 'barwise' })
    expect(await runProgram(['new', 'rain.md'], fromClone)).toBe(0)
    expect(fromClone.printed.out).toContain('  npm run -s barwise -- build rain.md ')
    expect(await runProgram([], fromClone)).toBe(0)
    expect(fromClone.printed.out).toContain('  npm run -s barwise -- new my-lesson.md ')
    const installed = testWorld()
    await runProgram([], installed)
    expect(installed.printed.out).toContain('\n  barwise build my-lesson.md  makes my-lesson.pdf')
  })
})
