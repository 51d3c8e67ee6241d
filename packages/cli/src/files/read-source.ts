import { readFileSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import type { SourceFile } from '@barwise/parser'
import { UsageError } from '../usage-error.ts'

const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** A larger file is no lesson; reading it would only exhaust the memory. */
const MOST_BYTES = 20_000_000

/**
 * Reads a lesson or book. `path` is as the caller wrote it and stays the name that findings carry.
 * Throws `UsageError` when it is not there, is a folder, is too large, or is no UTF-8 text.
 */
export function readSource(path: string, folder: string): SourceFile {
  const bytes = readBytes(path, resolve(folder, path))
  const other = otherKind(bytes)
  if (other !== null)
    throw new UsageError(
      `${path} is ${other}, not a plain text`,
      'save it as plain text in UTF-8, with a name that ends in .md',
    )
  try {
    return { path, text: UTF8.decode(bytes) }
  } catch {
    throw new UsageError(`${path} is not a text in UTF-8`, 'save it as UTF-8 in your editor')
  }
}

/** What a file is by its first bytes, where people take it for a text: word processors write zip archives. Null for any other. */
function otherKind(bytes: Uint8Array): string | null {
  const start = String.fromCharCode(...bytes.subarray(0, 5))
  if (start.startsWith('PK\u0003\u0004')) return "a word processor's file"
  if (start === '{\\rtf') return "a word processor's file"
  if (start === '%PDF-') return 'a PDF'
  return /^(?:\u00ff\u00fe|\u00fe\u00ff)/.test(start) ? 'a text in UTF-16' : null
}

function readBytes(path: string, absolute: string): Uint8Array {
  try {
    if (statSync(absolute).size > MOST_BYTES) {
      throw new UsageError(`${path} has more than 20 MB`, 'name a lesson: a Markdown file')
    }
    return readFileSync(absolute)
  } catch (error) {
    if (error instanceof UsageError) throw error
    switch ((error as NodeJS.ErrnoException).code) {
      case 'ENOENT':
      case 'ENOTDIR':
        throw new UsageError(`there is no file ${path}`, 'check the name, or write a lesson with `barwise new`')
      case 'EISDIR':
        throw new UsageError(`${path} is a folder`, 'name a lesson or a book in it, such as `book.md`')
      default:
        throw new UsageError(
          `${path} cannot be read (${(error as NodeJS.ErrnoException).code ?? error})`,
          'check its permissions',
        )
    }
  }
}
