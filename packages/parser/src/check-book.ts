import type { Finding } from './finding/finding.ts'
import type { FindingDraft } from './finding/finding-draft.ts'
import { helpWithNames } from './finding/nearest-names.ts'
import { inSourceOrder, placeFinding } from './finding/reporter.ts'
import type { Lesson } from './score/lesson.ts'
import type { Block, Inline } from './score/prose.ts'
import { createLineIndex } from './source/line-index.ts'
import type { SourceFile } from './source/span.ts'

/** A lesson of a book by the name others call it: its file without `.md`. */
export interface NamedLesson {
  readonly name: string
  readonly lesson: Lesson
  readonly source: SourceFile
}

type LessonBarRef = Extract<Inline, { kind: 'bar-ref' }>

/**
 * Checks what lessons of a book say about bars of each other (`:bar[2]{lesson=ferry-queue}`): that the part exists, or is
 * the only one, and has these bars. Lessons that do not exist are reported when a lesson is read.
 */
export function checkBook(lessons: readonly NamedLesson[]): readonly Finding[] {
  const byName = new Map(lessons.map((one) => [one.name, one.lesson]))
  return lessons.flatMap(({ lesson, source }) => {
    const index = createLineIndex(source.text)
    return barRefs(lesson.blocks)
      .flatMap((ref) => {
        const other = ref.lesson === null ? undefined : byName.get(ref.lesson)
        return other === undefined ? [] : checkRef(ref, other)
      })
      .map((draft) => placeFinding(draft, source.path, index))
      .sort(inSourceOrder)
  })
}

function checkRef(ref: LessonBarRef, other: Lesson): readonly FindingDraft[] {
  const { span } = ref
  const ids = other.parts.map((part) => part.id)
  const part = ref.part === null && ids.length === 1 ? other.parts[0] : other.parts.find(({ id }) => id === ref.part)
  if (part === undefined) {
    const message =
      ref.part === null ? `${ref.lesson} has ${ids.length} parts` : `${ref.lesson} has no part \`${ref.part}\``
    const help =
      ref.part === null ? 'name one of them with `part=`' : helpWithNames(ref.part, ids, 'name one of its parts')
    return [{ code: 'unknown-part', span, message, help }]
  }
  const first = part.bars[0]?.number ?? 0
  const last = part.bars.at(-1)?.number ?? 0
  if (ref.from >= first && ref.to <= last) return []
  const message = `the part \`${part.id}\` of ${ref.lesson} ends at bar ${last}`
  return [{ code: 'bad-bar-range', span, message, help: `write bars from ${first} to ${last}` }]
}

function barRefs(blocks: readonly Block[]): readonly LessonBarRef[] {
  return blocks.flatMap((block) => {
    switch (block.kind) {
      case 'heading':
      case 'paragraph':
        return refsIn(block.children)
      case 'list':
        return block.items.flatMap((item) => barRefs(item.children))
      case 'quote':
      case 'container':
        return barRefs(block.children)
      case 'table':
        return [block.header, ...block.rows].flatMap((row) => row.flatMap(refsIn))
      default:
        return []
    }
  })
}

function refsIn(inlines: readonly Inline[]): readonly LessonBarRef[] {
  return inlines.flatMap((inline) => {
    if (inline.kind === 'bar-ref') return [inline]
    return 'children' in inline ? refsIn(inline.children) : []
  })
}
