import type { Mark } from '../score/event.ts'
import { type BarContext, spanFrom } from './context.ts'

const MARKS: Readonly<Record<string, Mark>> = { '>': 'accent', '<': 'ghost', "'": 'short', _: 'ring', '~': 'vibrato' }

/** Where the marks at the end of a sign begin; its length when it has none. */
export function marksStart(text: string): number {
  let start = text.length
  while (start > 0 && MARKS[text[start - 1] ?? ''] !== undefined) start--
  return start
}

/** The marks as written, in alphabetical order, or null when they cannot stand together (which is reported). */
export function readMarks(signs: string, offset: number, { report }: BarContext): readonly Mark[] | null {
  for (let at = 0; at < signs.length; at++) {
    const sign = signs[at] ?? ''
    if (signs.indexOf(sign) < at) {
      report({
        code: 'repeated-mark',
        span: spanFrom(offset, at, at + 1),
        message: `the mark "${sign}" stands twice`,
        help: `write \`${sign}\` once`,
      })
      return null
    }
  }
  for (const [one, other, message] of [
    ['>', '<', 'a stroke cannot be accented and ghosted at once'],
    ["'", '_', 'a stroke cannot be short and ring on at once'],
  ] as const) {
    if (signs.includes(one) && signs.includes(other)) {
      const span = spanFrom(offset, 0, signs.length)
      report({ code: 'conflicting-marks', span, message, help: `keep \`${one}\` or \`${other}\`` })
      return null
    }
  }
  const marks: Mark[] = []
  for (const sign of signs) {
    const mark = MARKS[sign]
    if (mark !== undefined) marks.push(mark)
  }
  return marks.sort()
}
