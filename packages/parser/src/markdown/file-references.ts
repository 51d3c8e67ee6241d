import type { Span } from '../source/span.ts'
import type { ProseContext } from './prose-context.ts'

/** Reports a relative link or image whose file does not exist, when the caller knows which files there are. */
export function checkFile(url: string, span: Span, context: ProseContext): void {
  const path = filePathOf(url)
  if (path === null || context.hasFile === null || context.hasFile(path)) return
  const { hasFile } = context
  const guesses = [`${path}.md`, path.toLowerCase(), path.replace(/\s+/g, '-'), path.toLowerCase().replace(/\s+/g, '-')]
  const near = guesses.find((guess) => guess !== path && hasFile(guess))
  context.report({
    code: 'unknown-file',
    span: urlSpan(url, span, context.text),
    message: `there is no file \`${path}\``,
    help: near === undefined ? 'correct the name; it counts from the folder of this file' : `write \`${near}\``,
  })
}

/** The file a link points at, relative to the file that holds it; null for the web, mail, and places on the same page. */
export function filePathOf(url: string): string | null {
  if (/^(?:[a-z][a-z0-9+.-]*:|\/\/|#)/i.test(url)) return null
  const path = url.replace(/[?#].*$/s, '')
  if (path === '') return null
  try {
    return decodeURIComponent(path)
  } catch {
    return path
  }
}

/** Where the address stands inside a link or image; the whole of it when it is written in another way. */
export function urlSpan(url: string, span: Span, text: string): Span {
  const source = text.slice(span.start, span.end)
  const open = source.lastIndexOf('](')
  const at = open < 0 ? -1 : source.indexOf(url, open + 2)
  return at < 0 ? span : { start: span.start + at, end: span.start + at + url.length }
}
