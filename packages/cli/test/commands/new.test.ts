import { readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
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

describe('barwise new, named oddly', () => {
  test('asks for a name where there is none', async () => {
    for (const name of ['', '.', '..', 'lessons/', '-']) {
      const world = testWorld()
      expect(await runProgram(['new', '--', name], world), name).toBe(2)
      expect(world.printed.err).toBe('error: the lesson needs a file name\n  help: say `barwise new my-lesson.md`\n')
      expect(readdirSync(world.folder)).toEqual([])
    }
  })

  test('never writes over a link, even one that leads nowhere', async () => {
    const world = testWorld()
    symlinkSync('nowhere.md', join(world.folder, 'rain.md'))
    expect(await runProgram(['new', 'rain.md'], world)).toBe(2)
    expect(world.printed.err).toContain('rain.md is there already')
  })

  test('makes a title of the name where none is given', async () => {
    const world = testWorld()
    expect(await runProgram(['new', 'late-rain.md', '--title', ' '], world)).toBe(0)
    expect(readFileSync(join(world.folder, 'late-rain.md'), 'utf8')).toContain('title: "Late rain"')
  })

  test('tells a name that begins like an option so that it is taken for a file', async () => {
    const world = testWorld()
    expect(await runProgram(['new', '--', '-rain.md'], world)).toBe(0)
    expect(world.printed.out).toContain('barwise build ./-rain.md ')
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
