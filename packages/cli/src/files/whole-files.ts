import { randomBytes } from 'node:crypto'
import {
  constants,
  copyFileSync,
  linkSync,
  lstatSync,
  mkdirSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join, relative, sep } from 'node:path'
import { UsageError } from '../usage-error.ts'
import { contentOf, type FileContent } from './file-content.ts'
import { FILE_LIST, fileListText, foreignFile, type ListedFile, leftBehind, sha256Of } from './file-list.ts'
import { attempt } from './refusal.ts'

/** A file to write: its absolute path and what it holds. */
export interface PlannedFile {
  readonly path: string
  readonly content: FileContent
}

interface StagedFile {
  readonly from: string
  readonly to: string
  readonly sha256: string
}

/**
 * Writes files whole or not at all: every one is first written beside its target under a passing name, and only when all
 * are there do they take their places. When one cannot be written, or cannot take its place, the files of the last build are as
 * they were. `ownFolders` are folders that hold what we write and nothing else of ours: each gets a list of what was written, and
 * what the last list names and this one does not is taken away, unless somebody has changed it since; a file that no list names is
 * never written over. Returns the paths taken away.
 * Throws `UsageError` naming the file and the reason.
 */
export function writeWholeFiles(files: readonly PlannedFile[], ownFolders: readonly string[] = []): readonly string[] {
  const staged: StagedFile[] = []
  const aside = new Map<string, string>()
  const gone: string[] = []
  try {
    for (const file of files) stage(file, staged)
    for (const folder of ownFolders) {
      const written = inFolder(folder, staged)
      refuseForeign(folder, written)
      gone.push(...leftBehind(folder, new Set([...written.map(({ name }) => name), FILE_LIST])))
      stage({ path: join(folder, ...FILE_LIST.split('/')), content: fileListText(written) }, staged)
    }
    for (const path of [...gone, ...staged.map(({ to }) => to)]) keepAside(path, aside)
    exchange(gone, staged, aside)
    return gone
  } finally {
    for (const path of [...staged.map(({ from }) => from), ...aside.values()]) removeQuietly(path)
    for (const folder of new Set(gone.map(dirname))) removeIfEmpty(folder)
  }
}

/** Writes a file beside its target. What it holds is made here and let go again. */
function stage({ path, content }: PlannedFile, staged: StagedFile[]): void {
  const bytes = contentOf(content)
  const from = passingName(path)
  staged.push({ from, to: path, sha256: sha256Of(bytes) })
  attempt(path, () => {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(from, bytes, { flag: 'wx' })
  })
}

/** A name beside a file that nothing has, hidden where names with a dot are. */
function passingName(path: string): string {
  return join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.part`)
}

/** The files to be written inside a folder, named from there. */
function inFolder(folder: string, staged: readonly StagedFile[]): readonly ListedFile[] {
  return staged.flatMap(({ to, sha256 }) =>
    to.startsWith(folder + sep) ? [{ name: relative(folder, to).split(sep).join('/'), sha256 }] : [],
  )
}

/** Throws where a file of ours would take the place of somebody else's in a folder that is to be ours. */
function refuseForeign(folder: string, written: readonly ListedFile[]): void {
  const names = written.map(({ name }) => name)
  const path = attempt(folder, () => foreignFile(folder, names))
  if (path === null) return
  throw new UsageError(
    `${path} is not from an earlier build, and this one would write over it`,
    'move it away, or choose another folder with `--out`',
  )
}

/** Keeps what stands at a path under a passing name, so that it can be put back; where links cannot be made, as a copy. */
function keepAside(path: string, aside: Map<string, string>): void {
  attempt(path, () => {
    const before = lstatSync(path, { throwIfNoEntry: false })
    if (before === undefined || before.isDirectory()) return
    const kept = passingName(path)
    aside.set(path, kept)
    try {
      linkSync(path, kept)
    } catch {
      copyFileSync(path, kept, constants.COPYFILE_EXCL)
    }
  })
}

/** Takes the old files away, then puts the new ones in their places; when one step is refused, undoes those before it. */
function exchange(gone: readonly string[], staged: readonly StagedFile[], aside: Map<string, string>): void {
  const changed: string[] = []
  try {
    for (const path of gone) {
      attempt(path, () => rmSync(path))
      changed.push(path)
    }
    for (const { from, to } of staged) {
      attempt(to, () => renameSync(from, to))
      changed.push(to)
    }
  } catch (error) {
    for (const path of changed.reverse()) putBack(path, aside)
    throw error
  }
}

/** Puts back what stood at a path. What cannot be put back stays beside it under its passing name: better there than nowhere. */
function putBack(path: string, aside: Map<string, string>): void {
  const kept = aside.get(path)
  if (kept === undefined) {
    removeQuietly(path)
    return
  }
  aside.delete(path)
  try {
    renameSync(kept, path)
  } catch {
    // The refusal that made us go back is what the caller hears.
  }
}

/** Removes what a step left behind; where nothing could be put, nothing is there. */
function removeQuietly(path: string): void {
  try {
    rmSync(path, { force: true })
  } catch {
    // The refusal of the step itself is what the caller hears.
  }
}

/** Removes a folder that has become empty. */
function removeIfEmpty(folder: string): void {
  try {
    rmdirSync(folder)
  } catch {
    // Something is in it still.
  }
}
