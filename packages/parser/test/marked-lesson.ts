import type { Finding } from '../src/finding/finding.ts'
import { type ReadLessonOptions, readLesson } from '../src/read-lesson.ts'

/**
 * Reads a lesson whose expected findings are written inline: `⟦code:characters⟧` around what the finding covers. The marks
 * are taken out before reading. Returns what was expected and what was found, both as `line:column-line:column code`.
 */
export function readMarked(
  marked: string,
  options: ReadLessonOptions = {},
): { readonly expected: readonly string[]; readonly found: readonly string[]; readonly findings: readonly Finding[] } {
  const expected: string[] = []
  let text = ''
  const open: { code: string; start: number }[] = []
  for (const piece of marked.split(/(⟦[a-z-]+:|⟧)/)) {
    const code = /^⟦([a-z-]+):$/.exec(piece)?.[1]
    if (code !== undefined) open.push({ code, start: text.length })
    else if (piece === '⟧') {
      const { code: closing, start } = open.pop()!
      expected.push(`${placeIn(text, start)}-${placeIn(text, text.length)} ${closing}`)
    } else text += piece
  }
  const { findings } = readLesson({ path: 'lesson.md', text }, options)
  const found = findings.map(
    ({ code, place }) => `${place.line}:${place.column}-${place.endLine}:${place.endColumn} ${code}`,
  )
  return { expected, found, findings }
}

function placeIn(text: string, offset: number): string {
  const lines = text.slice(0, offset).split(/\r\n|\r|\n/)
  return `${lines.length}:${lines.at(-1)!.length + 1}`
}
