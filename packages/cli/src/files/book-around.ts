import { readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { type Book, readBook } from '@barwise/parser'

/** How many folders above a lesson its book may lie. */
const FOLDERS_UP = 4

/** The nearest `book.md` in the lesson's folder or above that lists the lesson (absolute paths); null when there is none. */
export function bookAround(lesson: string): { readonly path: string; readonly book: Book } | null {
  let folder = dirname(lesson)
  for (let up = 0; up <= FOLDERS_UP; up += 1) {
    const path = join(folder, 'book.md')
    const text = textOf(path)
    if (text !== null) {
      const { book } = readBook({ path, text })
      const lists = book.parts.some((part) => part.lessons.some((link) => resolve(folder, link.file) === lesson))
      if (lists) return { path, book }
    }
    const parent = dirname(folder)
    if (parent === folder) return null
    folder = parent
  }
  return null
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}
