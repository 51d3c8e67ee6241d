import {
  CODE_GROUPS,
  type CodeDoc,
  checkLesson,
  type Finding,
  type FindingCode,
  readBook,
  readLesson,
} from '@barwise/parser'
import { findingText } from '../report/finding-text.ts'
import { wrapWords } from '../report/wrap-words.ts'
import type { Output } from '../terminal/world.ts'

/** The name of the wrong example in the finding that is shown of it. */
const EXAMPLE = 'lesson.md'
/** So many like lines in a row are shown as they are; of more, one and how many there are. */
const MOST_LIKE = 3
/** Lines around what is mended. */
const CONTEXT_LINES = 2

/** What a code means, a wrong example, what the check says of it, and how it is mended. Ends with a line break. */
export function explanation(code: FindingCode, doc: CodeDoc, output: Output): string {
  const says = wrapWords(doc.says, { columns: output.columns, first: 0 }).join('\n')
  const found = findingIn(doc.bad, code)
  const pieces = [
    `${output.paint('bold', `${code} (${doc.severity})`)}\n\n${says}\nIt points at: ${asSentence(doc.covers)}`,
    `Wrong:\n${shown(doc.bad.trimEnd().split('\n'), output)}`,
    ...(found === null
      ? []
      : [`Barwise says:\n${indented(findingText(found, new Map([[EXAMPLE, doc.bad]]), narrower(output)))}`]),
    `Right:\n${shown(mendedLines(doc.bad, doc.good), output)}`,
  ]
  return `${pieces.join('\n\n')}\n`
}

/** Codes whose example is the file of a book. */
const BOOK_GROUP: ReadonlySet<FindingCode> = new Set(CODE_GROUPS.find(({ about }) => about === 'Books')?.codes)

/** The finding in the example; null for what only a book or a laid page shows. */
function findingIn(text: string, code: FindingCode): Finding | null {
  const ofBook = readBook({ path: EXAMPLE, text }).findings.find((finding) => finding.code === code)
  if (ofBook !== undefined && BOOK_GROUP.has(code)) return ofBook
  const source = { path: EXAMPLE, text }
  const { lesson, findings } = readLesson(source, { lessons: ['lesson'], hasFile: () => false })
  const told = findings.find((finding) => finding.code === code)
  if (told !== undefined || findings.some(({ severity }) => severity === 'error')) return told ?? null
  return checkLesson(lesson, [source]).findings.find((finding) => finding.code === code) ?? null
}

/** The lines that differ from the wrong example, with those next to them; an ellipsis stands for the rest. */
function mendedLines(bad: string, good: string): readonly string[] {
  const before = bad.trimEnd().split('\n')
  const after = good.trimEnd().split('\n')
  let start = 0
  while (start < after.length && after[start] === before[start]) start++
  let end = 0
  while (end < after.length - start && end < before.length - start && after.at(-1 - end) === before.at(-1 - end)) end++
  const from = start <= CONTEXT_LINES + 1 ? 0 : start - CONTEXT_LINES
  const to = end <= CONTEXT_LINES + 1 ? after.length : after.length - end + CONTEXT_LINES
  return [...(from > 0 ? ['…'] : []), ...after.slice(from, to), ...(to < after.length ? ['…'] : [])]
}

/** Lines of an example, indented; long ones are cut and many like ones counted. */
function shown(lines: readonly string[], output: Output): string {
  const out: string[] = []
  for (let at = 0; at < lines.length; ) {
    const line = lines[at] ?? ''
    let like = 1
    while (lines[at + like] === line) like++
    const kept = line !== '' && like > MOST_LIKE ? 1 : like
    for (let copy = 0; copy < kept; copy++) out.push(cut(line, output.columns - 2))
    if (kept < like) out.push(`… ${like - 1} more lines like this one`)
    at += like
  }
  return indented(out.join('\n'))
}

function cut(line: string, columns: number): string {
  return line.length > columns ? `${line.slice(0, columns - 1)}…` : line
}

function indented(text: string): string {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => (line === '' ? '' : `  ${line}`))
    .join('\n')
}

/** The output as it is inside the indentation. */
function narrower(output: Output): Output {
  return { ...output, columns: output.columns - 2 }
}

/** What a code covers, as the end of a sentence that has begun. */
function asSentence(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1).replace(/\.$/, '')}.`
}
