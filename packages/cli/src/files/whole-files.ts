import { randomBytes } from 'node:crypto'
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { UsageError } from '../usage-error.ts'

/** A file to write: its absolute path and what it holds. */
export interface PlannedFile {
  readonly path: string
  readonly bytes: Uint8Array | string
}

/**
 * Writes files whole or not at all: every one is first written beside its target under a passing name, and only when all
 * are there do they take their places. When one cannot be written, the files of the last build stay as they were.
 * Throws `UsageError` naming the file and the reason.
 */
export function writeWholeFiles(files: readonly PlannedFile[]): void {
  const staged: { readonly from: string; readonly to: string }[] = []
  try {
    for (const file of files) {
      const from = join(dirname(file.path), `.${basename(file.path)}.${randomBytes(4).toString('hex')}.part`)
      staged.push({ from, to: file.path })
      attempt(file.path, () => {
        mkdirSync(dirname(file.path), { recursive: true })
        writeFileSync(from, file.bytes, { flag: 'wx' })
      })
    }
    for (const { from, to } of staged) attempt(to, () => renameSync(from, to))
  } finally {
    for (const { from } of staged) removeQuietly(from)
  }
}

/** Removes what a failed step left behind; where nothing could be put, nothing is there. */
function removeQuietly(path: string): void {
  try {
    rmSync(path, { force: true })
  } catch {
    // The refusal of the step itself is what the caller hears.
  }
}

/** Runs one step for a target; a refusal of the system becomes a sentence that names the file. */
function attempt(path: string, step: () => void): void {
  try {
    step()
  } catch (error) {
    throw refusal(path, (error as NodeJS.ErrnoException).code ?? String(error))
  }
}

function refusal(path: string, code: string): UsageError {
  switch (code) {
    case 'EBUSY':
    case 'EPERM':
    case 'ETXTBSY':
      return new UsageError(
        `${path} is held by another program and cannot be replaced`,
        'close it there (a PDF viewer, most often) and build again',
      )
    case 'EACCES':
    case 'EROFS':
      return new UsageError(
        `${path} may not be written`,
        'choose another folder with `--out`, or change its permissions',
      )
    case 'EISDIR':
      return new UsageError(`${path} is a folder, not a file`, 'move that folder away, or choose another with `--out`')
    case 'ENOTDIR':
    case 'EEXIST':
      return new UsageError(
        `${path} cannot be made: a file stands where a folder is needed`,
        'choose another folder with `--out`',
      )
    case 'ENOSPC':
      return new UsageError(`${path} does not fit: the disk is full`, 'make room and build again')
    default:
      return new UsageError(`${path} cannot be written (${code})`, 'choose another folder with `--out`')
  }
}
