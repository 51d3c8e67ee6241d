import type { Book } from '@barwise/parser'
import type { LessonDocument } from '../document/document-block.ts'
import { setPlain } from '../document/typography.ts'
import { fillLesson } from './fill-lesson.ts'
import { setFrontMatter } from './front-matter.ts'
import { setAnswers } from './lay-out-lesson.ts'
import type { LayoutContext } from './layout-context.ts'
import type { LessonStart } from './lesson-start.ts'
import type { LaidPage, StructNode } from './page-content.ts'
import { framePage, textHeight } from './page-frame.ts'
import { type FilledPage, paginate } from './paginate.ts'
import { setSection } from './set-section.ts'

/** A lesson as its composed document, and the context to lay it out in (its fonts, words, findings). */
export interface LessonToLay {
  readonly document: LessonDocument
  readonly context: LayoutContext
  /** The heading of the book's part it opens, null when it does not. */
  readonly opensPart: string | null
}

/** The book that lessons belong to, and the context of what is its own: title, imprint, contents. */
export interface BookToLay {
  readonly book: Book
  readonly context: LayoutContext
}

/** Laid pages and how they are numbered: so many in roman numerals first. */
export interface LaidPages {
  readonly pages: readonly LaidPage[]
  readonly romanCount: number
}

/** Lays out lessons one after the other, each on new pages; a book gets its front matter before them and the answers after. */
export function layOutPages(lessons: readonly LessonToLay[], bookToLay: BookToLay | null): LaidPages {
  const book = bookToLay?.book ?? null
  const root: StructNode = { role: 'Document', parent: null }
  const front: StructNode = { role: 'Sect', parent: root }
  const body: LaidPage[] = []
  const starts: LessonStart[] = []
  const startsPage = book?.settings.open === 'right' ? 'right' : 'any'
  // The front matter's element comes before the lessons in the tree because its pages are drawn first.
  for (const { document, context, opensPart } of lessons) {
    const filled = fillLesson(
      document,
      { startsPage, outlineLevel: 1, parent: parentOf(document, book, root), answersHere: book === null },
      body.length + 1,
      context,
    )
    addPages(filled, { title: document.head.title, book, context }, body)
    const opening = body.findIndex((page) =>
      page.items.some((item) => item.kind === 'anchor' && item.name === document.id),
    )
    starts.push({
      title: document.head.title,
      subtitle: document.head.subtitle,
      anchor: document.id,
      part: opensPart,
      page: String(opening + 1),
      apart: false,
    })
  }
  if (bookToLay === null) return { pages: body, romanCount: 0 }
  addAnswers(lessons, bookToLay, root, { body, starts })
  const frontPages = setFrontMatter(bookToLay.book, starts, front, bookToLay.context)
  return { pages: [...frontPages, ...body], romanCount: frontPages.length }
}

/** The element that a lesson's own stand in; it says their language where that is not the book's. */
function parentOf({ language }: LessonDocument, book: Book | null, root: StructNode): StructNode {
  return book === null || language === book.settings.language ? root : { role: 'Sect', parent: root, language }
}

/** Frames filled pages: the first of them, where something opens, carries its folio alone. */
function addPages(
  filled: readonly FilledPage[],
  given: {
    readonly title: string
    readonly book: Book | null
    readonly context: LayoutContext
  },
  body: LaidPage[],
): void {
  const { book, context, title } = given
  const first = filled.findIndex((page) => !page.blank)
  filled.forEach((page, index) => {
    const number = body.length + 1
    const running = number % 2 === 0 && book !== null ? setPlain(book.settings.title, context.words) : title
    const text = index === first ? null : running
    body.push(framePage(page, { text, label: String(number), number, folio: true }, context))
  })
}

function addAnswers(
  lessons: readonly LessonToLay[],
  { book, context }: BookToLay,
  root: StructNode,
  into: { readonly body: LaidPage[]; readonly starts: LessonStart[] },
): void {
  const withAnswers = lessons.filter(({ document }) => document.answers.length > 0)
  if (withAnswers.length === 0) return
  const title = context.words.answers
  const sect: StructNode = { role: 'Sect', parent: root }
  const rows = withAnswers.flatMap(({ document, context: own }, index) => {
    const area = { width: context.style.textWidth, parent: parentOf(document, book, sect) }
    const name = context.words.answersOf(document.head.title)
    const head = setSection({ title: name, anchor: `answers.${document.id}`, tempo: null, about: '' }, area, own)
    return [
      { ...head, startsPage: index === 0 ? ('any' as const) : ('no' as const) },
      ...setAnswers([document], area, own),
    ]
  })
  const firstAnchor = withAnswers[0]?.document.id
  into.starts.push({
    title,
    subtitle: null,
    anchor: `answers.${firstAnchor}`,
    part: null,
    page: String(into.body.length + 1),
    apart: true,
  })
  const filled = paginate(rows, { height: textHeight(context.style), firstNumber: into.body.length + 1 })
  addPages(filled, { title, book, context }, into.body)
}
