import { pointsOf } from '../../drawing/lengths.ts'
import type { CheckNotes } from '../document/document-block.ts'
import { isEnglish, type MarginNote } from '../document/margin-note.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { withLeftStroke } from './left-stroke.ts'
import type { StructNode } from './page-content.ts'
import { type Row, row, spaceRows } from './row.ts'
import { setSection } from './set-section.ts'
import { setParagraph } from './set-text.ts'
import { inlineRuns, SANS, say } from './text-run.ts'

/** From the stroke to the words, and from one note to the next. */
const INSET = pointsOf(2.4)
const BETWEEN = pointsOf(1)
const STROKE = 0.7

/** Notes one under the other in small sans, with a thin stroke along their left edge: severity, place, what is the matter, the code. */
export function setMarginNotes(notes: readonly MarginNote[], area: Area, context: LayoutContext): readonly Row[] {
  const { ease } = context.style
  const inset = INSET * ease
  const inner: Area = { width: area.width - inset, parent: { role: 'Div', parent: area.parent } }
  const rows = notes.flatMap((note, index) =>
    spaceRows(setNote(note, inner, context), index === 0 ? 0 : BETWEEN * ease, 0),
  )
  return withLeftStroke(rows, { inset, width: STROKE })
}

function setNote(note: MarginNote, area: Area, context: LayoutContext): readonly Row[] {
  const { small } = context.style
  const { size } = small
  const where = note.where === '' ? [] : [say(`${note.where.replaceAll(' ', '\u00a0')}: `, 'sans-semibold', size)]
  const foreign = isEnglish(context.lesson.settings.language) ? {} : { language: 'en' }
  const node: StructNode = { role: 'P', parent: area.parent, ...foreign }
  const runs = [
    say(`${note.label}\u2002`, 'sans-bold', size),
    ...where,
    ...inlineRuns(note.children, { links: context.links, words: context.words, voice: SANS, size }),
    say(' ', 'sans', size),
    say(note.code, 'mono', size * 0.92),
  ]
  return setParagraph(runs, { role: 'P', size: small, node, hyphenate: false }, area, context)
}

/** What the check found, at the end of a lesson: how much stands where, and what belongs nowhere else. */
export function setCheckNotes(block: CheckNotes, area: Area, context: LayoutContext): readonly Row[] {
  const { small, measure } = context.style
  const narrow: Area = { ...area, width: Math.min(area.width, measure) }
  const head = setSection({ title: block.title, anchor: null, tempo: null, about: block.about }, area, context)
  const remarks = block.remarks.flatMap((text) =>
    spaceRows(
      setParagraph([say(text, 'sans', small.size)], { role: 'P', size: small, hyphenate: false }, narrow, context),
      pointsOf(1.4),
      0,
    ),
  )
  const notes = spaceRows(setMarginNotes(block.notes, narrow, context), pointsOf(1.4), 0)
  const rows = [...notes, ...remarks]
  return rows.length === 0 ? [{ ...head, keepNext: false }] : [head, ...rows, row(0, [])]
}
