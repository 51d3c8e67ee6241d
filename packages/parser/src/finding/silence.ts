import type { SourceLine } from '../source/source-line.ts'
import type { Report } from './finding-draft.ts'
import { HAND_CODES } from './hand-codes.ts'
import { HARMONY_CODES } from './harmony-codes.ts'
import { helpWithNames } from './nearest-names.ts'
import { PAGE_CODES } from './page-codes.ts'

/** The codes a writer may silence: what a colleague says, never what cannot be read. */
export const SILENCEABLE_CODES: readonly string[] = [
  ...Object.keys({ ...HAND_CODES, ...HARMONY_CODES, ...PAGE_CODES }),
  'page-in-english',
]

/** Reports the names in `// fine: name` comments that no finding has. */
export function reportUnknownSilences(lines: readonly SourceLine[], report: Report): void {
  for (const line of lines) {
    const comment = /(?:^|\s)\/\/[ \t]*fine:/.exec(line.text)
    if (comment === null) continue
    const from = comment.index + comment[0].length
    for (const match of line.text.slice(from).matchAll(/[^\s,]+/g)) {
      const name = match[0]
      if (SILENCEABLE_CODES.includes(name)) continue
      const start = line.offset + from + match.index
      const help = helpWithNames(name, SILENCEABLE_CODES, 'write the name of the finding as it is printed')
      const message = `no finding that can be silenced is called \`${name}\``
      report({ code: 'unknown-rule', span: { start, end: start + name.length }, message, help })
    }
  }
}
