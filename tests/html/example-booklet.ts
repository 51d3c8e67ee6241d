import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { loadWork, readWebFonts } from '@barwise/cli'
import { type Booklet, openFonts, renderHtml } from '@barwise/render'
import { fontBytes } from '../support/fonts.ts'

const EXAMPLES: string = fileURLToPath(new URL('../../examples', import.meta.url))

/** The booklet of the example book, as files in memory. */
export function exampleBooklet(): Booklet {
  const { book, lessons } = loadWork('book.md', EXAMPLES, () => {})
  if (book === null || lessons.some(({ readable }) => !readable)) throw new Error('the example book does not read')
  const read = lessons.map(({ lesson }) => ({ lesson, images: new Map() }))
  return renderHtml({ book, lessons: read, fonts: openFonts(fontBytes()), webFonts: readWebFonts() })
}

/** Writes a booklet into a fresh folder and returns the folder. */
export function onDisk(booklet: Booklet): string {
  const folder = mkdtempSync(join(tmpdir(), 'barwise-booklet-'))
  for (const [name, bytes] of booklet) {
    const path = join(folder, name)
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, bytes)
  }
  return folder
}

/** The names of the pages. */
export function pagesOf(booklet: Booklet): readonly string[] {
  return [...booklet.keys()].filter((name) => name.endsWith('.html'))
}
