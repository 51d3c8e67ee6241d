import type { World } from './world.ts'

/** How the caller starts Barwise: by its name, or from a clone through npm, which names the script it runs. */
export function commandName({ env }: World): string {
  return env.npm_lifecycle_event === 'barwise' ? 'npm run -s barwise --' : 'barwise'
}
