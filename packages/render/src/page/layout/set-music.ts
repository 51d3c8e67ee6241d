import { assertNever, type FormEntry } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, row, spaceRows } from './row.ts'
import { setBlankStaves } from './set-blank.ts'
import { setCards } from './set-cards.ts'
import { setCheckNotes } from './set-margin-notes.ts'
import { setPlan } from './set-plan.ts'
import { setSection } from './set-section.ts'
import { setShapes } from './set-shapes.ts'
import { setStrips } from './set-strip.ts'
import { setSystems } from './set-systems.ts'
import { setParagraph } from './set-text.ts'
import { say, type TextRun } from './text-run.ts'

/** Sets the blocks of a lesson that hold music. Throws on a block of prose (our bug: those are set elsewhere). */
export function setMusic(block: DocumentBlock, area: Area, context: LayoutContext): readonly Row[] {
  switch (block.kind) {
    case 'shapes':
      return setShapes(block.shapes, area, context, { notes: block.notes })
    case 'part-head':
      return [
        setSection({ title: block.title, anchor: block.anchor, tempo: block.tempo, about: block.about }, area, context),
      ]
    case 'systems':
      return setSystems({ part: block.part, bars: block.bars, anchors: block.bars === null }, area, context)
    case 'cards':
      return setCards(block, area, context)
    case 'strip':
      return setStrips(block, area, context)
    case 'plan':
      return setPlan(block, area, context)
    case 'form':
      return setForm(block.entries, area, context)
    case 'blank':
      return setBlankStaves(block.bars, area, context)
    case 'check-notes':
      return setCheckNotes(block, area, context)
    case 'heading':
    case 'paragraph':
    case 'list':
    case 'quote':
    case 'code-block':
    case 'rule':
    case 'table':
    case 'container':
    case 'answer-note':
    case 'page-break':
      throw new Error(`a ${block.kind} is no music`)
    default:
      return assertNever(block)
  }
}

/** The order of the music in one line: names in bold, bars and repetitions beside them. */
function setForm(entries: readonly FormEntry[], area: Area, context: LayoutContext): readonly Row[] {
  const { style, words } = context
  const size = style.body.size
  const runs = entries.flatMap((entry, index): readonly TextRun[] => {
    const bars = entry.bars === null ? '' : ` ${words.bar(entry.bars.from, entry.bars.to).replaceAll(' ', '\u00a0')}`
    const times = entry.times === 1 ? '' : ` ${words.times(entry.times)}`
    return [
      ...(index === 0 ? [] : [say('  ·  ', 'sans', size)]),
      say(entry.name.replaceAll(' ', '\u00a0'), 'sans-semibold', size),
      say(`${bars}${times}`, 'sans', size),
    ]
  })
  // Without colour the title would read as the first name: in large print it has a line of its own.
  const title = style.large
    ? say(words.form, 'sans-bold', size, { breaksAfter: true })
    : say(`${words.form}\u2003`, 'sans-bold', size, { ink: 'accent' })
  const rows = setParagraph([title, ...runs], { role: 'P', size: style.body, hyphenate: false }, area, context)
  return spaceRows(rows.length === 0 ? [row(0, [])] : rows, pointsOf(2.5) * style.ease, pointsOf(2.5) * style.ease)
}
