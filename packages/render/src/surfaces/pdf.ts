import type { Book, Finding, FindingDraft, Lesson, Paper } from '@barwise/parser'
import type { FontSet } from '../fonts/font-set.ts'
import { lessonIds } from '../page/document/anchors.ts'
import type { LessonDocument } from '../page/document/document-block.ts'
import { editionName } from '../page/document/edition-name.ts'
import { resolvePath } from '../page/document/named-lesson.ts'
import { pageWords } from '../page/document/words-of-language.ts'
import { type Edition, PUPIL } from '../page/edition.ts'
import { hyphenationFor } from '../page/layout/hyphenation.ts'
import { type LessonToLay, layOutPages } from '../page/layout/lay-out-pages.ts'
import type { LayoutContext, PageImage } from '../page/layout/layout-context.ts'
import { linkPlaces, type PrintedFile } from '../page/layout/link-places.ts'
import type { LaidPage } from '../page/layout/page-content.ts'
import { pageStyle } from '../page/layout/page-style.ts'
import { composeLesson } from '../page/lesson-document.ts'
import { openPdf } from './pdf/pdfkit-door.ts'
import { writePages } from './pdf/write-pages.ts'

/** A lesson to print; composed for the edition when no document is given. */
export interface PdfLesson {
  readonly lesson: Lesson
  readonly document?: LessonDocument
  /** What the check found in the lesson; printed in the teacher's edition only. */
  readonly findings?: readonly Finding[]
}

export interface RenderPdfOptions {
  /** In the order in which they are printed. */
  readonly lessons: readonly PdfLesson[]
  /** The book they belong to, null for lessons alone. */
  readonly book?: Book | null
  readonly fonts: FontSet
  /** A4 when left out and the book says nothing. */
  readonly paper?: Paper
  /** Pictures by the source written in the lesson. */
  readonly images?: ReadonlyMap<string, PageImage>
  readonly creationDate: Date
  /** The pupil's when left out. */
  readonly edition?: Edition
  /** False leaves content streams readable, for tests. */
  readonly compress?: boolean
}

/** What only the page can find, with the file it was found in. */
export interface PageFinding {
  readonly file: string
  readonly draft: FindingDraft
}

export interface RenderedPdf {
  readonly bytes: Uint8Array
  readonly pageCount: number
  readonly findings: readonly PageFinding[]
  /** The pages as laid, for tests of their geometry. */
  readonly pages: readonly LaidPage[]
}

/**
 * Lessons, or a whole book, as a tagged PDF built to the rules of PDF/UA-1: fonts embedded as subsets, outline, page labels, links, and every
 * figure told in words. The same input gives the same bytes. Throws when no lesson is given (our bug).
 */
export async function renderPdf(options: RenderPdfOptions): Promise<RenderedPdf> {
  const { fonts } = options
  const book = options.book ?? null
  const first = options.lessons[0]
  if (first === undefined) throw new Error('a PDF needs at least one lesson')
  const findings: PageFinding[] = []
  const images = options.images ?? new Map<string, PageImage>()
  const edition = options.edition ?? PUPIL
  const style = pageStyle(options.paper ?? book?.settings.paper ?? 'a4', edition)
  const language = book?.settings.language ?? first.lesson.settings.language
  const parts = partTitles(book, options.lessons)
  const ids = lessonIds(options.lessons.map(({ lesson }) => lesson))
  const printed = options.lessons.map(({ lesson, findings: checked = [], document: given }, index) => {
    const document = given ?? composeLesson(lesson, { edition, findings: checked, id: ids[index] ?? '' })
    return { lesson, document, id: document.id, file: lesson.file, parts: lesson.parts }
  })
  /** What the words of a file are set with, whose language is given. */
  const contextOf = async (file: PrintedFile, lesson: Lesson, tag: string): Promise<LayoutContext> => ({
    fonts,
    style,
    words: pageWords(tag),
    lesson,
    lessonId: file.id,
    links: linkPlaces(file, printed),
    editionName: editionName(edition, tag),
    hyphenate: await hyphenationFor(tag),
    images,
    report: reporterFor(file.file, findings),
  })
  const toLay: LessonToLay[] = []
  for (const [index, own] of printed.entries()) {
    const { lesson, document } = own
    const part = parts[index] ?? null
    const opensPart = part === (parts[index - 1] ?? null) ? null : part
    toLay.push({ document, context: await contextOf(own, lesson, lesson.settings.language), opensPart })
  }
  const bookToLay =
    book === null
      ? null
      : { book, context: await contextOf({ id: '', file: book.file, parts: [] }, first.lesson, language) }
  const { pages, romanCount } = layOutPages(toLay, bookToLay)
  const name = book?.settings.title ?? first.lesson.settings.title
  const title = [name, editionName(edition, language)].filter((each) => each !== null).join(' – ')
  const pdf = openPdf({
    title,
    author: book?.settings.author ?? first.lesson.settings.author,
    language,
    creationDate: options.creationDate,
    fonts,
    compress: options.compress ?? true,
  })
  writePages(pages, images, { pdf, fonts, mono: edition.mono || edition.large })
  pdf.pageLabels([
    ...(romanCount > 0 ? [{ from: 0, style: 'roman', start: 1 } as const] : []),
    { from: romanCount, style: 'decimal', start: 1 },
  ])
  return { bytes: await pdf.finish(), pageCount: pages.length, findings, pages }
}

/** Takes what is found in a file while its pages are set, each thing once. */
function reporterFor(file: string, findings: PageFinding[]): LayoutContext['report'] {
  const seen = new Set<string>()
  return (draft) => {
    const key = `${draft.code} ${draft.span.start} ${draft.message}`
    if (seen.has(key)) return
    seen.add(key)
    findings.push({ file, draft })
  }
}

/** The heading of the book's part that each lesson stands under. */
function partTitles(book: Book | null, lessons: readonly PdfLesson[]): readonly (string | null)[] {
  if (book === null) return lessons.map(() => null)
  const headings = new Map(
    book.parts.flatMap((part) =>
      part.lessons.map((link) => [resolvePath(book.file, link.file), part.heading] as const),
    ),
  )
  return lessons.map(({ lesson }) => headings.get(resolvePath('', lesson.file)) ?? null)
}
