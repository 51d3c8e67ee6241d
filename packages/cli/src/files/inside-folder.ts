import { realpathSync } from 'node:fs'
import { isAbsolute, relative, resolve, sep } from 'node:path'

/**
 * The real path of a file named relative to `from`, when it lies inside `folder` (both absolute), links followed;
 * null when it is not there or lies outside.
 */
export function fileInside(folder: string, from: string, name: string): string | null {
  try {
    const real = realpathSync(resolve(from, name))
    const way = relative(realpathSync(folder), real)
    return way === '' || way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way) ? null : real
  } catch {
    return null
  }
}
