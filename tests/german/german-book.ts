import { fileURLToPath } from 'node:url'
import { type LoadedWork, loadWork, readFontBytes, readWebFonts } from '@barwise/cli'
import {
  type Booklet,
  type DrawnItem,
  type Edition,
  type LaidPage,
  lessonText,
  openFonts,
  PUPIL,
  renderHtml,
  renderPdf,
} from '@barwise/render'

const FOLDER: string = fileURLToPath(new URL('../data/german', import.meta.url))

/** The German book of the test data, read and checked as the command does it. */
export function germanBook(): LoadedWork {
  const work = loadWork('book.md', FOLDER, () => {})
  const fault = work.findings.find(({ severity }) => severity === 'error')
  if (fault !== undefined) throw new Error(`the German book does not read: ${fault.message}`)
  return work
}

/** Everything its PDF says: lines, words drawn in figures, what figures are to those who do not see them, outline entries. */
export async function pdfSays(work: LoadedWork, edition: Edition = PUPIL): Promise<readonly string[]> {
  const fonts = openFonts(readFontBytes(edition))
  const lessons = work.lessons.map(({ lesson }) => ({ lesson }))
  const { pages } = await renderPdf({ book: work.book, lessons, fonts, edition, creationDate: new Date(0) })
  return pages.flatMap(pageSays)
}

function pageSays(page: LaidPage): readonly string[] {
  const said: string[] = []
  let open = ''
  for (const item of page.items) {
    if (item.kind === 'line') {
      const text = item.fragments.map((fragment) => fragment.text).join('')
      if (item.ends === 'hyphen') open += text.replace(/-$/, '')
      else {
        said.push(open + text)
        open = ''
      }
    }
    if (item.kind === 'outline') said.push(item.title)
    if (item.kind === 'figure') said.push(item.node?.alt ?? '', ...item.drawing.items.flatMap(drawnText))
  }
  return said
}

function drawnText(item: DrawnItem): readonly string[] {
  if (item.kind === 'group') return item.items.flatMap(drawnText)
  return item.kind === 'glyphs' && item.face !== 'music' ? [item.text] : []
}

/** Everything its booklet says: text and the attributes that are read aloud. */
export function bookletSays(work: LoadedWork): readonly string[] {
  const lessons = work.lessons.map(({ lesson }) => ({ lesson, images: new Map() }))
  const booklet: Booklet = renderHtml({
    book: work.book,
    lessons,
    fonts: openFonts(readFontBytes()),
    webFonts: readWebFonts(),
  })
  return [...booklet].flatMap(([name, bytes]) => {
    if (!name.endsWith('.html') || typeof bytes !== 'string') return []
    const attributes = [...bytes.matchAll(/ (?:aria-label|alt|title|content)="([^"]*)"/g)].map(
      (match) => match[1] ?? '',
    )
    const spoken = attributes.filter((value) => !value.startsWith('width=device-width'))
    return [...spoken, ...bytes.replace(/<(style|script)[\s\S]*?<\/\1>/g, ' ').split(/<[^>]*>/)]
  })
}

/** Its lessons as text. */
export function textSays(work: LoadedWork): readonly string[] {
  return work.lessons.map(({ lesson }) => lessonText(lesson))
}
