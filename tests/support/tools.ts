import { spawnSync } from 'node:child_process'

/** Whether an outside tool is installed. Where it is not, says so, so that a test may skip; with `BARWISE_REQUIRE_TOOLS=1` that is a failure. */
export function hasTool(name: string): boolean {
  const found = spawnSync(name, ['--version'], { stdio: 'ignore' }).error === undefined
  if (found) return true
  if (process.env.BARWISE_REQUIRE_TOOLS === '1') throw new Error(`${name} is required and not installed`)
  console.warn(`skipped: ${name} is not installed`)
  return false
}
