import type { Book, Lesson } from '@barwise/parser'
import type { LessonDocument } from '../document/document-block.ts'
import { pageWords } from '../document/words-of-language.ts'
import { fillLesson } from './fill-lesson.ts'
import { setFrontMatter } from './front-matter.ts'
import { setAnswers } from './lay-out-lesson.ts'
import type { LayoutContext } from './layout-context.ts'
import type { LessonStart } from './lesson-start.ts'
import type { LaidPage, StructNode } from './page-content.ts'
import { framePage, textHeight } from './page-frame.ts'
import { type FilledPage, paginate } from './paginate.ts'
import { setSection } from './set-section.ts'

/** A lesson with its composed document, and the context to lay it out in (its fonts, words, findings). */
export interface LessonToLay {
  readonly lesson: Lesson
  readonly document: LessonDocument
  readonly context: LayoutContext
  /** The heading of the book's part it opens, null when it does not. */
  readonly opensPart: string | null
}

/** Laid pages and how they are numbered: so many in roman numerals first. */
export interface LaidPages {
  readonly pages: readonly LaidPage[]
  readonly romanCount: number
}

/** Lays out lessons one after the other, each on new pages; a book gets its front matter before them and the answers after. */
export function layOutPages(lessons: readonly LessonToLay[], book: Book | null): LaidPages {
  const root: StructNode = { role: 'Document', parent: null }
  const front: StructNode = { role: 'Sect', parent: root }
  const body: LaidPage[] = []
  const starts: LessonStart[] = []
  const startsPage = book?.settings.open === 'right' ? 'right' : 'any'
  // The front matter's element comes before the lessons in the tree because its pages are drawn first.
  for (const { document, context, opensPart } of lessons) {
    const filled = fillLesson(
      document,
      { startsPage, outlineLevel: 1, parent: root, answersHere: book === null },
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
  const last = lessons.at(-1)
  if (book === null || last === undefined) return { pages: body, romanCount: 0 }
  // What belongs to the whole book speaks its language, whatever that of its lessons.
  const context = { ...last.context, words: pageWords(book.settings.language) }
  addAnswers(lessons, { book, root, context }, { body, starts })
  const frontPages = setFrontMatter(book, starts, front, context)
  return { pages: [...frontPages, ...body], romanCount: frontPages.length }
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
    const running = number % 2 === 0 ? (book?.settings.title ?? title) : title
    const text = index === first ? null : running
    body.push(framePage(page, { text, label: String(number), number, folio: true }, context))
  })
}

function addAnswers(
  lessons: readonly LessonToLay[],
  given: { readonly book: Book; readonly root: StructNode; readonly context: LayoutContext },
  into: { readonly body: LaidPage[]; readonly starts: LessonStart[] },
): void {
  const { book, context } = given
  const withAnswers = lessons.filter(({ document }) => document.answers.length > 0)
  if (withAnswers.length === 0) return
  const area = { width: context.style.textWidth, parent: { role: 'Sect', parent: given.root } as const }
  const title = context.words.answers
  const rows = withAnswers.flatMap(({ document, context: own }, index) => [
    {
      ...setSection(
        { title: `${title}: ${document.head.title}`, anchor: `answers.${document.id}`, tempo: null, about: '' },
        area,
        own,
      ),
      startsPage: index === 0 ? ('any' as const) : ('no' as const),
    },
    ...setAnswers([document], area, own),
  ])
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
