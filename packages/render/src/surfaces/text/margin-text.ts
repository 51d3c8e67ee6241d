import type { MarginNote } from '../../page/document/margin-note.ts'
import { inlineText } from './inline-text.ts'
import type { TextContext } from './text-context.ts'

/** Notes of the teacher's edition, one a line: `Note: The change in bar 2, beat 1 is tight. (change-tight)`. */
export function marginLines(notes: readonly MarginNote[], context: TextContext): readonly string[] {
  return notes.map(({ label, where, children, code }) => {
    const lead = where === '' ? label : `${label}, ${where.replaceAll('\u00a0', ' ')}`
    return `${lead}: ${inlineText(children, context)} (${code})`
  })
}
