import { readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { type Book, readBook } from '@barwise/parser'

/** How many folders above a lesson its book may lie. */
const FOLDERS_UP = 4

/** A book and its file, absolute. */
export interface BookAround {
  readonly path: string
  readonly book: Book
}

/** The nearest `book.md` in the lesson's folder or above that lists the lesson (absolute path); null when there is none. */
export function bookAround(lesson: string): BookAround | null {
  return nearestBook(lesson, (book, folder) =>
    book.parts.some((part) => part.lessons.some((link) => resolve(folder, link.file) === lesson)),
  )
}

/** The nearest `book.md` in the file's folder or above whose shapes stand in that file (absolute path); null when there is none. */
export function bookOfShapes(file: string): BookAround | null {
  return nearestBook(
    file,
    ({ settings }, folder) => settings.shapes !== null && resolve(folder, settings.shapes) === file,
  )
}

function nearestBook(file: string, belongs: (book: Book, folder: string) => boolean): BookAround | null {
  let folder = dirname(file)
  for (let up = 0; up <= FOLDERS_UP; up += 1) {
    const path = join(folder, 'book.md')
    const text = textOf(path)
    if (text !== null) {
      const { book } = readBook({ path, text })
      if (belongs(book, folder)) return { path, book }
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
