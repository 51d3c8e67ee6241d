// Draws the README's picture anew: the first page of a lesson of the example book, from the PDF the project makes.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'barwise-picture-'))

function run(command, ...args) {
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: 'inherit' })
  if (error !== undefined)
    throw new Error(`${command} is needed for the picture: install poppler-utils`, { cause: error })
  if (status !== 0) process.exit(status ?? 1)
}

try {
  run(process.execPath, 'packages/cli/dist/main.js', 'build', 'examples/ferry-queue.md', '--to', 'pdf', '--out', folder)
  const pages = ['-f', '1', '-l', '1', '-singlefile']
  run('pdftoppm', '-png', '-r', '110', ...pages, join(folder, 'ferry-queue.pdf'), 'docs/ferry-queue')
  console.log('Wrote docs/ferry-queue.png')
} finally {
  rmSync(folder, { recursive: true })
}
