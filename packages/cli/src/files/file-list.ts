import { createHash } from 'node:crypto'
import { lstatSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileInside } from './inside-folder.ts'

/** A file we wrote: its name from the folder on, with `/`, and the SHA-256 of what it held, in hexadecimal. */
export interface ListedFile {
  readonly name: string
  readonly sha256: string
}

/** Where a folder that is ours keeps the list of what we wrote there. */
export const FILE_LIST = 'assets/files.sha256'

/** The list as text, a line a file, sorted: the form that `sha256sum --check` reads when run in the folder. */
export function fileListText(files: readonly ListedFile[]): string {
  const sorted = [...files].sort((a, b) => (a.name < b.name ? -1 : 1))
  return sorted.map(({ name, sha256 }) => `${sha256}  ${name}\n`).join('')
}

/** The SHA-256 of some bytes, or of a text in UTF-8, in hexadecimal. */
export function sha256Of(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex')
}

/**
 * The absolute paths of the files that an earlier build wrote into a folder, that are as it left them, and whose names are not in
 * `kept`. A file somebody has changed since, one reached through a link, and one we did not write are never among them.
 */
export function leftBehind(folder: string, kept: ReadonlySet<string>): readonly string[] {
  return readFileList(folder).flatMap(({ name, sha256 }) => {
    if (kept.has(name)) return []
    const path = join(folder, ...name.split('/'))
    return isAsWritten(folder, path, sha256) ? [path] : []
  })
}

/**
 * The absolute path of the first of some files, named from the folder on, where a file stands that no earlier build wrote, so that
 * writing would lose it; null when there is none.
 */
export function foreignFile(folder: string, names: readonly string[]): string | null {
  const listed = new Set([FILE_LIST, ...readFileList(folder).map(({ name }) => name)])
  const foreign = names.filter((name) => !listed.has(name)).map((name) => join(folder, ...name.split('/')))
  return foreign.find((path) => statSync(path, { throwIfNoEntry: false })?.isFile() ?? false) ?? null
}

/** Whether a path is a plain file of the folder and holds what we wrote; what cannot be read or looked for is not ours to judge. */
function isAsWritten(folder: string, path: string, sha256: string): boolean {
  try {
    return isOwn(folder, path) && sha256Of(readFileSync(path)) === sha256
  } catch {
    return false
  }
}

/** The files the list names; none when there is no list. Lines that are not ours are passed over. */
function readFileList(folder: string): readonly ListedFile[] {
  let text: string
  try {
    text = readFileSync(join(folder, ...FILE_LIST.split('/')), 'utf8')
  } catch {
    return []
  }
  return text.split('\n').flatMap((line) => {
    const [, sha256, name] = /^([0-9a-f]{64}) {2}([^\\\r]+)$/.exec(line) ?? []
    return sha256 === undefined || name === undefined ? [] : [{ name, sha256 }]
  })
}

/** Whether a path is a plain file of the folder itself: no link stands there or on the way. */
function isOwn(folder: string, path: string): boolean {
  if (!(lstatSync(path, { throwIfNoEntry: false })?.isFile() ?? false)) return false
  return fileInside(folder, folder, path) === join(realpathSync(folder), relative(folder, path))
}
