import type { Book, Finding, Lesson } from '@barwise/parser'
import type { FontSet } from '../fonts/font-set.ts'
import { lessonIds } from '../page/document/anchors.ts'
import { editionName } from '../page/document/edition-name.ts'
import { setPlain } from '../page/document/typography.ts'
import { pageWords } from '../page/document/words-of-language.ts'
import { type Edition, PUPIL } from '../page/edition.ts'
import { composeLesson, composeProse } from '../page/lesson-document.ts'
import { contentsPage } from './html/contents-page.ts'
import { type FlowContext, flowOf } from './html/flow.ts'
import { type LessonPlace, lessonPage } from './html/lesson-page.ts'
import { type BookletPage, placeBook } from './html/places.ts'
import { PLAYER_SCRIPT } from './html/player/player-scripts.ts'
import { screenMeasures } from './html/screen-measures.ts'
import { styleSheet } from './html/style-sheet.ts'
import { playerStyles } from './html/styles/player-styles.ts'
import type { WebFont } from './html/web-font.ts'
import { webWords } from './html/web-words-of-language.ts'

/** A picture of a lesson: PNG or JPEG bytes, and the name it gets in the booklet. */
export interface BookletImage {
  readonly fileName: string
  readonly bytes: Uint8Array
}

/** A lesson for the booklet, with its pictures by the names the lesson calls them. */
export interface BookletLesson {
  readonly lesson: Lesson
  readonly images: ReadonlyMap<string, BookletImage>
  /** What the check found in the lesson; shown in the teacher's edition only. */
  readonly findings?: readonly Finding[]
}

export interface RenderHtmlInput {
  /** The book the lessons belong to; null makes a booklet of one lesson. */
  readonly book: Book | null
  /** The pictures among the book's own words, by the names it calls them. */
  readonly bookImages?: ReadonlyMap<string, BookletImage>
  /** In the book's order. */
  readonly lessons: readonly BookletLesson[]
  readonly fonts: FontSet
  readonly webFonts: readonly WebFont[]
  /** The pupil's when left out. */
  readonly edition?: Edition
  /** The script that plays the parts (see `player/main.ts`), as one classic script; without it the booklet is one to read. */
  readonly player?: string
}

/** The files of a booklet by their names in its folder, with `/` between folders. `index.html` is the first page. */
export type Booklet = ReadonlyMap<string, string | Uint8Array>

/** The files of a booklet, each made anew when it is asked for, so that a long book never lies in memory as a whole. */
export type BookletPlan = ReadonlyMap<string, () => string | Uint8Array>

/** Makes the whole web booklet in memory; see `planBooklet`, which makes one file at a time. */
export function renderHtml(input: RenderHtmlInput): Booklet {
  return new Map([...planBooklet(input)].map(([name, make]) => [name, make()]))
}

/**
 * Plans the web booklet: one folder that opens from disk, with one page a lesson and, for a book, a first page with the contents.
 * It needs no network, and a script for the play-along alone. The same input gives the same names and the same bytes.
 */
export function planBooklet(input: RenderHtmlInput): BookletPlan {
  const files = new Map<string, () => string | Uint8Array>()
  const pages = pagesOf(input)
  const places = placeBook(pages)
  const images = input.lessons.map((lesson) => imagesOf(lesson.images, files))
  input.lessons.forEach(({ lesson }, index) => {
    const page = pages[index] as BookletPage
    files.set(page.fileName, () => {
      const context = contextFor(input, lesson, page, places, images[index] ?? new Map())
      return lessonPage(context, placeOf(input.book, pages, index))
    })
  })
  const { book } = input
  const ownImages = imagesOf(input.bookImages ?? new Map(), files)
  if (book !== null) files.set('index.html', () => contents(input, book, { pages, places, images: ownImages }))
  const { player, edition = PUPIL } = input
  const playing = player === undefined ? '' : playerStyles(edition.large)
  files.set('assets/style.css', () => styleSheet(input.webFonts, edition) + playing)
  if (player !== undefined) files.set(PLAYER_SCRIPT, () => player)
  for (const font of input.webFonts) files.set(`assets/fonts/${font.fileName}`, () => font.bytes)
  return new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1)))
}

/** The page of each lesson. */
function pagesOf({ book, lessons, edition = PUPIL }: RenderHtmlInput): readonly BookletPage[] {
  const ids = lessonIds(lessons.map(({ lesson }) => lesson))
  return lessons.map(({ lesson, findings = [] }, index) => {
    const id = ids[index] ?? ''
    const document = composeLesson(lesson, { id, findings, edition })
    const fileName = book === null ? 'index.html' : `${id}.html`
    return { lessonFile: lesson.file, fileName, document }
  })
}

function contextFor(
  input: RenderHtmlInput,
  lesson: Lesson,
  page: BookletPage,
  places: FlowContext['places'],
  images: ReadonlyMap<string, string>,
): FlowContext {
  return {
    lesson,
    page,
    places,
    images,
    document: page.document,
    fonts: input.fonts,
    words: pageWords(page.document.language),
    web: webWords(page.document.language),
    screen: screenMeasures(input.edition),
    playable: input.player !== undefined,
    drawings: [],
    ids: new Set(['top']),
  }
}

/** Puts each picture into the files, and gives the addresses by the names that the words call them. */
function imagesOf(
  images: ReadonlyMap<string, BookletImage>,
  files: Map<string, () => string | Uint8Array>,
): ReadonlyMap<string, string> {
  const addresses = new Map<string, string>()
  for (const [source, { fileName, bytes }] of images) {
    files.set(`images/${fileName}`, () => bytes)
    addresses.set(source, `images/${encodeURIComponent(fileName)}`)
  }
  return addresses
}

function placeOf(book: Book | null, pages: readonly BookletPage[], index: number): LessonPlace | null {
  if (book === null) return null
  return {
    bookTitle: setPlain(book.settings.title, pageWords(book.settings.language)),
    number: index + 1,
    previous: linkTo(pages[index - 1]),
    next: linkTo(pages[index + 1]),
  }
}

function linkTo(page: BookletPage | undefined): LessonPlace['next'] {
  return page === undefined ? null : { title: page.document.head.title, fileName: page.fileName }
}

function contents(
  input: RenderHtmlInput,
  book: Book,
  { pages, places, images }: Pick<FlowContext, 'places' | 'images'> & { readonly pages: readonly BookletPage[] },
): string {
  const { language } = book.settings
  const speaking = { words: pageWords(language), web: webWords(language) }
  const first = input.lessons[0]?.lesson
  const page = pages[0]
  const intro = (index: number): ReturnType<typeof flowOf> => {
    const blocks = book.parts[index]?.intro ?? []
    if (first === undefined || page === undefined) return []
    const own = { ...page, lessonFile: book.file, fileName: 'index.html' }
    const context = { ...contextFor(input, first, own, places, images), ...speaking }
    return flowOf(composeProse(blocks, language), context)
  }
  const edition = editionName(input.edition ?? PUPIL, language)
  return contentsPage({ book, pages, edition, ...speaking, intro })
}
