import { UsageError } from '../usage-error.ts'

/** Runs one step for a file; a refusal of the system becomes a `UsageError` that names the file and says what to do. */
export function attempt<T>(path: string, step: () => T): T {
  try {
    return step()
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
