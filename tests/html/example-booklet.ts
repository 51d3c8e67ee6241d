import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { loadWork, readFontBytes, readWebFonts } from '@barwise/cli'
import { readLesson } from '@barwise/parser'
import { type Booklet, type Edition, openFonts, PUPIL, type RenderHtmlInput, renderHtml } from '@barwise/render'
import { HARD_LESSON } from './hard-lesson.ts'

const EXAMPLES: string = fileURLToPath(new URL('../../examples', import.meta.url))

/** The booklet of the example book, as files in memory; with the script of the play-along when it is given. */
export function exampleBooklet(edition: Edition = PUPIL, player?: string): Booklet {
  const { book, lessons } = loadWork('book.md', EXAMPLES, () => {})
  if (book === null || lessons.some(({ readable }) => !readable)) throw new Error('the example book does not read')
  const read = lessons.map(({ lesson }) => ({ lesson, images: new Map() }))
  return renderHtml({ book, lessons: read, edition, ...scriptOf(player), ...fontsOf(edition) })
}

/** The booklet of the hard lesson, as files in memory: one page, `index.html`. */
export function hardBooklet(edition: Edition = PUPIL): Booklet {
  return lessonBooklet(HARD_LESSON, edition)
}

/** The booklet of a lesson alone, as files in memory: one page, `index.html`. */
export function lessonBooklet(text: string, edition: Edition = PUPIL, player?: string): Booklet {
  const { lesson, findings } = readLesson({ path: 'lesson.md', text })
  const fault = findings.find(({ severity }) => severity === 'error')
  if (fault !== undefined) throw new Error(`the lesson does not read: ${fault.message}`)
  const lessons = [{ lesson, images: new Map() }]
  return renderHtml({ book: null, lessons, edition, ...scriptOf(player), ...fontsOf(edition) })
}

function scriptOf(player: string | undefined): Pick<RenderHtmlInput, 'player'> {
  return player === undefined ? {} : { player }
}

function fontsOf(edition: Edition): Pick<RenderHtmlInput, 'fonts' | 'webFonts'> {
  return { fonts: openFonts(readFontBytes(edition)), webFonts: readWebFonts(edition) }
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
