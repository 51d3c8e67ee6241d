import type { Finding } from './finding/finding.ts'
import type { Report } from './finding/finding-draft.ts'
import { createReporter } from './finding/reporter.ts'
import { toBlocks } from './markdown/blocks.ts'
import { BOOK_SETTINGS, readBookSettings } from './markdown/book-settings.ts'
import { readFrontMatter } from './markdown/front-matter.ts'
import { lessonLinks, wordsOf } from './markdown/lesson-list.ts'
import { reportNearMisses } from './markdown/near-misses.ts'
import { parseMarkdown } from './markdown/parse-markdown.ts'
import type { ProseContext } from './markdown/prose-context.ts'
import { scanRawBlocks } from './markdown/raw-blocks.ts'
import { settingReader } from './markdown/setting-reader.ts'
import { outlineTree } from './markdown/tree-outline.ts'
import type { Book, BookPart, LessonLink } from './score/book.ts'
import type { Block } from './score/prose.ts'
import { createLineIndex } from './source/line-index.ts'
import type { SourceFile } from './source/span.ts'

/** What surrounds a book. */
export interface ReadBookOptions {
  /** Whether a file exists, its path relative to the book's; without it links and images are not checked. */
  readonly hasFile?: (path: string) => boolean
}

/** A book as far as it can be read, and everything that cannot be. */
export interface BookReading {
  readonly book: Book
  readonly findings: readonly Finding[]
}

/**
 * Reads a book's file: settings, headings for its parts, and lists of links to its lessons in order. Links of lists to
 * Markdown files are lessons; everything else between two headings is the words at the start of that part. Never throws.
 *
 * @example readBook({ path: 'book.md', text }).book.parts[0]?.lessons[0]?.file // 'ferry-queue.md'
 */
export function readBook(source: SourceFile, options: ReadBookOptions = {}): BookReading {
  const { text } = source
  const reporter = createReporter(source)
  const { report } = reporter
  const index = createLineIndex(text)
  const matter = readFrontMatter(source, index, { names: BOOK_SETTINGS, report, what: 'book' })
  const settings = readBookSettings(matter, settingReader(matter, report), report)
  const start = matter.bodyLine <= index.lineCount ? index.lineSpan(matter.bodyLine).start : text.length
  const shift = text.charCodeAt(start) === 0xfeff ? start + 1 : start
  const scan = scanRawBlocks(text, index, matter.bodyLine)
  const tree = parseMarkdown(text, scan.blocks, { index, bodyStart: shift, bodyLine: matter.bodyLine })
  const outline = outlineTree(tree, matter.bodyLine - 1)
  reportNearMisses(scan.blocks, { text, shift, outline, scan, report })
  const context = {
    ...emptyContext(text, shift, report, options.hasFile ?? null),
    definitions: outline.definitions,
  }
  const parts: { heading: string | null; intro: Block[]; lessons: LessonLink[] }[] = [
    { heading: null, intro: [], lessons: [] },
  ]
  const lessons = {
    listed: new Set<string>(),
    others: new Map([
      [source.path.split(/[/\\]/).at(-1) ?? source.path, 'the book itself'],
      ...(settings.shapes === null ? [] : [[settings.shapes, 'the file of its shapes'] as const]),
    ]),
  }
  for (const node of tree.children) {
    const part = parts.at(-1)
    if (node.type === 'heading') parts.push({ heading: wordsOf(node), intro: [], lessons: [] })
    else {
      const links = node.type === 'list' ? lessonLinks(node, lessons, context) : []
      const blocks = toBlocks([node], context)
      part?.lessons.push(...links)
      // A list that names no lesson is part of the words.
      if (links.length === 0) part?.intro.push(...blocks)
    }
  }
  for (const block of scan.blocks) {
    if (!outline.rawLines.has(block.openLine)) continue
    const message = `nobody reads a ${block.name} block in the file of a book`
    const help = block.name === 'part' ? 'move it to a lesson' : 'move it to a lesson, or to a file named by `shapes:`'
    report({ code: 'misplaced-block', span: block.opening, message, help })
  }
  if (lessons.listed.size === 0 && !reporter.findings().some(({ code }) => code === 'lesson-not-linked')) {
    const help = 'list them as links, as in `- [Ferry Queue](ferry-queue.md)`'
    if (matter.readable)
      report({ code: 'empty-book', span: matter.opening, message: 'this book names no lesson', help })
  }
  const kept: readonly BookPart[] = parts.filter(
    (part) => part.heading !== null || part.intro.length > 0 || part.lessons.length > 0,
  )
  return { book: { kind: 'book', file: source.path, settings, parts: kept }, findings: reporter.findings() }
}

function emptyContext(
  text: string,
  shift: number,
  report: Report,
  hasFile: ((path: string) => boolean) | null,
): ProseContext {
  return {
    text,
    shift,
    report,
    parts: [],
    shapeNames: new Set(),
    usedShapes: new Set(),
    shown: { ids: new Set(), told: false },
    lessons: null,
    hasFile,
    rawAt: new Map(),
  }
}
