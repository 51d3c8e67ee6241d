import { checkLesson, type Finding, readBook, readLesson } from '@barwise/parser'

/** What went wrong with one text; null when all held. */
export function troubleWith(
  text: string,
  options: { readonly slowMs: number; readonly now: () => number },
): string | null {
  const source = { path: 'mutated.md', text }
  const started = options.now()
  try {
    const read = readLesson(source, { lessons: [], hasFile: () => true })
    const checked = checkLesson(read.lesson, [source])
    const book = readBook(source)
    const tookMs = options.now() - started
    if (tookMs > options.slowMs) return `took ${Math.round(tookMs)} ms`
    return outside([...read.findings, ...checked.findings, ...book.findings], text)
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error)
  }
}

/** The first finding whose place is not in the text, in words; null when all are. */
function outside(findings: readonly Finding[], text: string): string | null {
  const lines = text.split(/\r\n|\r|\n/)
  for (const { code, place, message, help } of findings) {
    const first = lines[place.line - 1]
    const last = lines[place.endLine - 1]
    const fits =
      first !== undefined &&
      last !== undefined &&
      place.column >= 1 &&
      place.column <= first.length + 1 &&
      place.endColumn <= last.length + 1 &&
      (place.line < place.endLine || (place.line === place.endLine && place.column <= place.endColumn))
    if (!fits) return `${code} stands outside the file: ${JSON.stringify(place)}`
    if (message === '' || help === '' || /[.\n]$/.test(message)) return `${code} is badly worded: ${message} / ${help}`
  }
  return null
}
