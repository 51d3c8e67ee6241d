// Runs the command line from the clone: installs and compiles what is missing, then runs in the folder the caller is in.
// Whatever installing and compiling have to say goes to the error stream, so that the command's own output stays clean.
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const node = (...args) => spawnSync(process.execPath, args, { cwd: root, stdio: ['ignore', 2, 2] }).status ?? 3

const prepared = node('tools/bootstrap.mjs') || node('node_modules/typescript/bin/tsc', '-b', 'packages/cli')
if (prepared !== 0) process.exit(3)

// npm runs scripts in the clone and leaves the caller's folder in INIT_CWD.
if (process.env.INIT_CWD !== undefined) process.chdir(process.env.INIT_CWD)
await import('../packages/cli/dist/main.js')
