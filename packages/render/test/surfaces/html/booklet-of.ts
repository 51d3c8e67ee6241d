import { readLesson } from '@barwise/parser'
import { JSDOM } from 'jsdom'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { openFonts } from '../../../src/fonts/font-set.ts'
import { type RenderHtmlInput, renderHtml } from '../../../src/surfaces/html.ts'

const fonts = openFonts(fontBytes())

/** The page of a lesson alone, made from its text and read by an HTML parser. Throws when the lesson does not read. */
export function pageOf(text: string, given: Pick<RenderHtmlInput, 'edition'> = {}): Document {
  const booklet = bookletOf(text, given)
  return new JSDOM(String(booklet.get('index.html'))).window.document
}

/** The booklet of a lesson alone, without the fonts of a page. */
export function bookletOf(text: string, given: Pick<RenderHtmlInput, 'edition'> = {}): ReturnType<typeof renderHtml> {
  const { lesson, findings } = readLesson({ path: 'lesson.md', text })
  const faults = findings.filter((finding) => finding.severity === 'error')
  if (faults.length > 0) throw new Error(faults.map((finding) => finding.message).join('; '))
  return renderHtml({ book: null, lessons: [{ lesson, images: new Map() }], fonts, webFonts: [], ...given })
}

/** The words of an element, spaces evened. */
export function wordsIn(element: Element | null): string {
  return (element?.textContent ?? '').replace(/\s+/g, ' ').trim()
}
