#!/usr/bin/env node
// What `npm install --global ./tools/command` puts on the path: it runs the clone it lies in, in the caller's folder.
import { existsSync } from 'node:fs'

if (existsSync(new URL('../../packages/cli/dist/main.js', import.meta.url))) {
  await import('../../packages/cli/dist/main.js')
} else {
  delete process.env.INIT_CWD
  await import('../run-from-clone.mjs')
}
