import { realpathSync } from 'node:fs'
import { resolve } from 'node:path'
import { UsageError } from '../usage-error.ts'

/** A file that is going to be written: its absolute path, and the lesson or book it is made of as the caller named it. */
export interface OwnedFile {
  readonly path: string
  readonly of: string
}

/**
 * Throws `UsageError` where writing would lose something: when two files would take one place, or one would take the place of a
 * file that the build was made from.
 *
 * @param read files that were read, absolute.
 * @param shown a path as the caller knows it.
 */
export function refuseClashes(
  files: readonly OwnedFile[],
  read: readonly string[],
  shown: (path: string) => string,
): void {
  const sources = new Set(read.map(realPath))
  const taken = new Map<string, string>()
  for (const { path, of } of files) {
    if (sources.has(realPath(path)))
      throw new UsageError(
        `${of} is made from ${shown(path)}, which the build would write over`,
        'choose another folder with `--out`',
      )
    const other = taken.get(path)
    if (other === of)
      throw new UsageError(`${of} would write ${shown(path)} twice`, 'give one of its lessons another file name')
    if (other !== undefined)
      throw new UsageError(
        `${other} and ${of} would both write ${shown(path)}`,
        'build them one at a time, each with its own `--out`',
      )
    taken.set(path, of)
  }
}

/** Where a path leads, links followed; where nothing stands yet, the path itself. */
function realPath(path: string): string {
  try {
    return realpathSync.native(path)
  } catch {
    return resolve(path)
  }
}
