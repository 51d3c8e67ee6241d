import { basename } from 'node:path'

const ENDING = /\.(?:md|markdown)$/i

/** Whether a file's name is one of Markdown: it ends in `.md` or `.markdown`. */
export function isMarkdown(path: string): boolean {
  return ENDING.test(path)
}

/** A lesson's or book's name: that of its file without folder and ending, as in `stemOf('lessons/rain.md')` = `rain`. */
export function stemOf(path: string): string {
  return basename(path).replace(ENDING, '')
}
