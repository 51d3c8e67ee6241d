import type { RootContent } from 'mdast'
import type { LessonLink } from '../score/book.ts'
import type { Span } from '../source/span.ts'
import { filePathOf, urlSpan } from './file-references.ts'
import { spanOf } from './inlines.ts'
import type { ProseContext } from './prose-context.ts'

/** The lessons a book has listed so far, and the files that are none. */
export interface LessonList {
  readonly listed: Set<string>
  /** The book's own file and its shape file, with what each is. */
  readonly others: ReadonlyMap<string, string>
}

const ENDING = /\.(?:md|markdown)$/i
/** A link with a space that Markdown does not allow, a name in double brackets, or a bare file name. */
const NAMED =
  /\[([^\]\n]{0,200})\][ \t]{0,9}\(([^)\n]{1,200}\.(?:md|markdown))\)|\[\[([^\]\n]{1,200})\]\]|[^\s()[\]<>]{1,200}\.(?:md|markdown)\b/i

/**
 * The links to Markdown files in a list, in order, those of lists inside it too. An item that names a file otherwise, and a
 * lesson listed again, are reported.
 */
export function lessonLinks(list: RootContent, lessons: LessonList, context: ProseContext): readonly LessonLink[] {
  const links: LessonLink[] = []
  const waiting: RootContent[] = [list]
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.type === 'link') {
      const path = filePathOf(node.url)
      if (path === null || !ENDING.test(path)) continue
      const span = urlSpan(node.url, spanOf(node, context), context.text)
      if (isNew(path, span, lessons, context)) links.push({ label: wordsOf(node), file: path, span })
      continue
    }
    if (node.type === 'paragraph' && !hasLink(node)) tellUnlinked(spanOf(node, context), context)
    if ('children' in node) waiting.push(...node.children.toReversed())
  }
  return links
}

function isNew(path: string, span: Span, { listed, others }: LessonList, { report }: ProseContext): boolean {
  const other = others.get(path)
  const again = listed.has(path)
  listed.add(path)
  if (other === undefined && !again) return true
  const message = other === undefined ? `\`${path}\` is listed twice` : `\`${path}\` is ${other}, not a lesson`
  report({ code: 'repeated-lesson', span, message, help: 'delete this line' })
  return false
}

/** Reports the first file that words name without a link. */
function tellUnlinked(span: Span, { text, report, hasFile }: ProseContext): void {
  const source = text.slice(span.start, span.end)
  const match = NAMED.exec(source)
  if (match === null) return
  const [whole, label, linked, bracketed] = match
  const named = linked ?? bracketed ?? whole
  const file = ENDING.test(named) ? named : `${named}.md`
  if (bracketed !== undefined && hasFile !== null && !hasFile(file)) return
  const title = label ?? titleOf(file)
  const address = /\s/.test(file) ? `<${file}>` : file
  const start = span.start + match.index
  const message = `\`${named}\` is not written as a link`
  report({
    code: 'lesson-not-linked',
    span: { start, end: start + whole.length },
    message,
    help: `write \`[${title}](${address})\``,
  })
}

/** A title made of a file's name: `ferry-queue.md` is "Ferry queue". */
function titleOf(file: string): string {
  const words = (file.split('/').at(-1) ?? file).replace(ENDING, '').replace(/[-_]+/g, ' ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

function hasLink(node: RootContent): boolean {
  return 'children' in node && node.children.some((child) => child.type === 'link' || hasLink(child))
}

/** The words of a node without their marks. */
export function wordsOf(node: RootContent): string {
  const words: string[] = []
  const waiting: RootContent[] = [node]
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
    if (one.type === 'text' || one.type === 'inlineCode') words.push(one.value)
    else if (one.type === 'break') words.push(' ')
    else if ('children' in one) waiting.push(...one.children.toReversed())
  }
  return words.join('').replace(/\s+/g, ' ').trim()
}
