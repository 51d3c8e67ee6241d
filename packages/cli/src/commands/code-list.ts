import { CODE_DOCS, CODE_GROUPS } from '@barwise/parser'
import type { Output } from '../terminal/world.ts'

const MARKS = { error: '', warning: '*', note: '+' } as const
const GAP = 2

/** Every code in its group, in as many columns as the lines have room for. Ends with a line break. */
export function codeList(output: Output): string {
  const shown = CODE_GROUPS.map(({ about, codes }) => ({
    about,
    codes: codes.map((code) => `${code}${MARKS[CODE_DOCS[code].severity]}`),
  }))
  const width = Math.max(...shown.flatMap(({ codes }) => codes.map((code) => code.length))) + GAP
  const columns = Math.max(1, Math.floor((output.columns - GAP) / width))
  const groups = shown.map(({ about, codes }) => {
    const rows = Array.from({ length: Math.ceil(codes.length / columns) }, (_, row) =>
      codes.slice(row * columns, (row + 1) * columns),
    )
    const lines = rows.map((row) => `  ${row.map((code) => code.padEnd(width)).join('')}`.trimEnd())
    return `${output.paint('bold', about)}\n${lines.join('\n')}\n`
  })
  return `Every finding there can be: errors, warnings (*) and what is merely worth knowing (+).
\`barwise explain CODE\` says more about one.

${groups.join('\n')}`
}
