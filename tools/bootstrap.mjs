// Installs the workspace's dependencies with the pinned pnpm, unless the last install already matches the lockfile.
// A failed install is tried once more: package downloads do break off now and then.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'

const root = new URL('..', import.meta.url)
const stamp = new URL('node_modules/.bootstrap-stamp', root)
const lockFile = new URL('pnpm-lock.yaml', root)
const { packageManager } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8'))

const lockHash = createHash('sha256').update(readFileSync(lockFile)).digest('hex')
if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lockHash) process.exit(0)

const install = () =>
  spawnSync('npx', ['--yes', packageManager, 'install', '--frozen-lockfile'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  }).status ?? 1

console.error(`Installing what Barwise needs with ${packageManager} (the first time takes a minute) ...`)
let status = install()
if (status !== 0) {
  console.error('The install did not finish. Trying once more ...')
  status = install()
}
if (status === 0) writeFileSync(stamp, lockHash)
else
  console.error(
    'The install failed twice. The lines above say why; a network that blocks the npm registry is the usual cause.',
  )
process.exit(status)
