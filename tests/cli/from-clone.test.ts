import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, realpathSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const TOOLS: string = fileURLToPath(new URL('../../tools', import.meta.url))

interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

function run(script: string, args: readonly string[], cwd: string, env: Readonly<Record<string, string>> = {}): Ran {
  const { INIT_CWD: _, FORCE_COLOR: __, ...clean } = process.env
  const done = spawnSync(process.execPath, [join(TOOLS, script), ...args], {
    cwd,
    env: { ...clean, ...env },
    encoding: 'utf8',
  })
  return { code: done.status, out: done.stdout, err: done.stderr }
}

const folder = (): string => realpathSync(mkdtempSync(join(tmpdir(), 'barwise-clone-')))

describe('the command from a clone', { timeout: 120_000 }, () => {
  test('runs in the folder the caller is in, not in the clone', () => {
    const home = folder()
    const made = run('run-from-clone.mjs', ['new', 'song.md'], TOOLS, { INIT_CWD: home })
    expect(made).toMatchObject({ code: 0, err: '' })
    expect(existsSync(join(home, 'song.md'))).toBe(true)
  })

  test('prints nothing but its own output, without colours into a pipe', () => {
    const home = folder()
    writeFileSync(join(home, 'a.md'), '---\ntitle: A\n---\n\n:::part{#a grid=4}\nbar 1\n  1-4: x x x\n:::\n')
    const { code, out, err } = run('run-from-clone.mjs', ['check', 'a.md', '--format', 'json'], TOOLS, {
      INIT_CWD: home,
    })
    expect({ code, err }).toEqual({ code: 1, err: '' })
    expect(JSON.parse(out)).toMatchObject([{ code: 'wrong-slot-count', file: 'a.md' }])
    const coloured = run('run-from-clone.mjs', ['check', 'a.md'], TOOLS, { INIT_CWD: home, FORCE_COLOR: '1' })
    expect(coloured.out).toContain('\u001b[')
    expect(run('run-from-clone.mjs', ['check', 'a.md'], TOOLS, { INIT_CWD: home }).out).not.toContain('\u001b[')
  })

  test('keeps the exit code of wrong usage', () => {
    expect(run('run-from-clone.mjs', ['buidl'], TOOLS).code).toBe(2)
  })

  test('installed as a command, builds beside the lesson', () => {
    const home = folder()
    expect(run('command/barwise.mjs', ['new', 'song.md', '--title', 'Rain & "roof"'], home).code).toBe(0)
    const { code, out } = run('command/barwise.mjs', ['build', 'song.md'], home)
    expect(code).toBe(0)
    expect(out).toContain('Wrote song-web/index.html (the web booklet)')
    expect(readFileSync(join(home, 'song-web/index.html'), 'utf8')).toContain('<h1>Rain &#x26; “roof”</h1>')
  })
})
