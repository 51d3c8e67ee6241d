import { assertNever, type Block, type Finding, type Lesson, type Part, type Shape } from '@barwise/parser'
import { aboutPart } from './document/about-part.ts'
import { answerAnchor, lessonId, partAnchor } from './document/anchors.ts'
import { composeText } from './document/compose-text.ts'
import type { Answer, DocumentBlock, LessonDocument } from './document/document-block.ts'
import { editionName } from './document/edition-name.ts'
import { lessonFacts } from './document/facts.ts'
import { withInner } from './document/inner-blocks.ts'
import { type Margin, NO_MARGIN, openMargin } from './document/margin.ts'
import { noteValueOf } from './document/note-value.ts'
import type { PageWords } from './document/page-words.ts'
import { setGiven, setPlain, setWords } from './document/typography.ts'
import { pageWords } from './document/words-of-language.ts'
import { type Edition, PUPIL } from './edition.ts'

export { composeProse } from './document/compose-prose.ts'

/** Which copy of the lesson is made. */
export interface ComposeOptions {
  /** The pupil's when left out. */
  readonly edition?: Edition
  /** What the check found in the lesson; printed in the teacher's edition only. */
  readonly findings?: readonly Finding[]
  /** The id to start anchors with; made from the file's name when left out. */
  readonly id?: string
}

/**
 * The one ordered content of a lesson. What the writer placed stands where it was written; a `part` block prints what its
 * `show` lists. Shapes that parts use but no block prints are shown before the first part. Answers are held back for the end.
 * The teacher's edition adds the teacher's notes, what the check found where it belongs, and at the end what belongs nowhere.
 */
export function composeLesson(lesson: Lesson, options: ComposeOptions = {}): LessonDocument {
  const words = pageWords(lesson.settings.language)
  const { edition = PUPIL } = options
  const { teacher } = edition
  const context: Context = {
    lesson,
    words,
    id: options.id ?? lessonId(lesson),
    teacher,
    margin: teacher ? openMargin(lesson, options.findings ?? [], words) : NO_MARGIN,
    rise: headingRise(lesson.blocks),
    level: { last: 1 },
    answers: [],
  }
  const flow = withMissingShapes(composeBlocks(lesson.blocks, context), context)
  const checked = context.margin.atEnd(flow.flatMap(withInner).some((block) => block.kind === 'plan'))
  return {
    kind: 'lesson-document',
    id: context.id,
    language: lesson.settings.language,
    head: {
      title: setPlain(lesson.settings.title, words),
      subtitle: setGiven(lesson.settings.subtitle, words),
      author: setGiven(lesson.settings.author, words),
      edition: editionName(edition, lesson.settings.language),
      facts: lessonFacts(lesson, words),
    },
    flow: checked === null ? flow : [...flow, checked],
    answers: context.answers,
  }
}

interface Context {
  readonly lesson: Lesson
  readonly words: PageWords
  readonly id: string
  readonly teacher: boolean
  readonly margin: Margin
  /** Added to a heading's depth so that the highest one stands at level 2. */
  readonly rise: number
  readonly level: { last: number }
  readonly answers: Answer[]
}

function composeBlocks(blocks: readonly Block[], context: Context): DocumentBlock[] {
  return blocks.flatMap((block) => composeBlock(block, context))
}

function composeBlock(block: Block, context: Context): readonly DocumentBlock[] {
  const { words, lesson } = context
  switch (block.kind) {
    case 'heading': {
      const level = Math.max(2, Math.min(block.depth + context.rise, context.level.last + 1, 6)) as 2 | 3 | 4 | 5 | 6
      context.level.last = level
      return [{ kind: 'heading', level, children: setWords(block.children, words) }]
    }
    case 'paragraph':
    case 'list':
    case 'quote':
    case 'code-block':
    case 'rule':
    case 'table':
      return composeText(block, words, (children) => composeBlocks(children, context)) ?? []
    case 'container':
      return composeContainer(block, context)
    case 'grids': {
      const shapes = block.shapes.flatMap((name) => lesson.shapes.find((shape) => shape.name === name) ?? [])
      return shapes.length === 0 ? [] : [{ kind: 'shapes', shapes, notes: context.margin.besideShapes(shapes) }]
    }
    case 'part':
      return withPart(block.part, context, (part) => composePart(part, context))
    case 'sheet':
      return withPart(block.part, context, (part) => [{ kind: 'systems', part, bars: block.bars }])
    case 'cards':
      return withPart(block.part, context, (part) => [cardsOf(part, block.bars, context)])
    case 'strip':
      return withPart(block.part, context, (part) => [{ kind: 'strip', part, bars: block.bars }])
    case 'plan':
      return withPart(block.part, context, (part) => [planOf(part, context)])
    case 'form':
      return [{ kind: 'form', entries: block.entries }]
    case 'blank':
      return [{ kind: 'blank', bars: block.bars }]
    case 'page-break':
      return [{ kind: 'page-break' }]
    default:
      return assertNever(block)
  }
}

/** A part where it stands: its head, then what its `show` lists, in the fixed order from the whole to the detail. */
function composePart(part: Part, context: Context): readonly DocumentBlock[] {
  if (part.show.length === 0) return []
  const blocks: DocumentBlock[] = []
  if (part.show.includes('sheet')) blocks.push(partHead(part, context), { kind: 'systems', part, bars: null })
  if (part.show.includes('cards')) blocks.push(cardsOf(part, null, context))
  if (part.show.includes('plan') && !placesPlan(context.lesson.blocks, part.id)) blocks.push(planOf(part, context))
  return blocks
}

function partHead(part: Part, context: Context): DocumentBlock {
  const first = part.bars.find((bar) => bar.number > 0) ?? part.bars[0]
  const beatTicks = first?.beatTicks ?? 3360
  context.level.last = Math.max(context.level.last, 2)
  return {
    kind: 'part-head',
    part,
    title: setPlain(part.title, context.words),
    tempo: { note: noteValueOf(beatTicks), bpm: first?.tempoBpm ?? context.lesson.settings.tempoBpm, goalBpm: null },
    about: aboutPart(part, context.words),
    anchor: partAnchor(context.id, part),
  }
}

function cardsOf(part: Part, bars: { from: number; to: number } | null, context: Context): DocumentBlock {
  const title = context.words.barByBar(nameIfSeveral(part, context))
  return { kind: 'cards', part, bars, title, notes: context.margin.besideCards(part, bars) }
}

function planOf(part: Part, context: Context): DocumentBlock {
  return { kind: 'plan', part, title: context.words.practicePlan(nameIfSeveral(part, context)) }
}

/** The part's title where the lesson has more than one part, so that a section says whose it is. */
function nameIfSeveral(part: Part, context: Context): string | null {
  return context.lesson.parts.length > 1 ? setPlain(part.title, context.words) : null
}

function composeContainer(block: Extract<Block, { kind: 'container' }>, context: Context): readonly DocumentBlock[] {
  const { words } = context
  switch (block.role) {
    case 'teacher':
      if (!context.teacher) return []
      return [
        { kind: 'container', role: 'teacher', title: words.teacher, blocks: composeBlocks(block.children, context) },
      ]
    case 'care':
      return [{ kind: 'container', role: 'care', title: words.care, blocks: composeBlocks(block.children, context) }]
    case 'answer': {
      const number = context.answers.length + 1
      const blocks = composeBlocks(block.children, context)
      context.answers.push({
        number,
        title: words.answer(number),
        blocks,
        anchor: answerAnchor(context.id, number, 'answer'),
      })
      return [
        {
          kind: 'answer-note',
          number,
          text: words.answerNote(number),
          anchor: answerAnchor(context.id, number, 'note'),
        },
      ]
    }
    default:
      return assertNever(block.role)
  }
}

function withPart(
  id: string,
  context: Context,
  make: (part: Part) => readonly DocumentBlock[],
): readonly DocumentBlock[] {
  const part = context.lesson.parts.find((candidate) => candidate.id === id)
  return part === undefined || part.bars.length === 0 ? [] : make(part)
}

/** Whether a `::plan` of its own stands for the part, so that the part's block does not print a second one. */
function placesPlan(blocks: readonly Block[], part: string): boolean {
  return blocks.some((block) => {
    if (block.kind === 'plan') return block.part === part
    if (block.kind === 'list') return block.items.some((item) => placesPlan(item.children, part))
    return (block.kind === 'quote' || block.kind === 'container') && placesPlan(block.children, part)
  })
}

/** How far headings move down so that the highest stands at level 2, under the lesson's title. */
function headingRise(blocks: readonly Block[]): number {
  const depths = blocks.flatMap((block) => (block.kind === 'heading' ? [block.depth] : []))
  return depths.length === 0 ? 0 : 2 - Math.min(...depths)
}

/** Puts the shapes that parts use but nothing prints before the first part. */
function withMissingShapes(flow: readonly DocumentBlock[], { lesson, margin }: Context): readonly DocumentBlock[] {
  const shown = new Set(
    flow
      .flatMap(withInner)
      .flatMap((block) => (block.kind === 'shapes' ? block.shapes.map((shape) => shape.name) : [])),
  )
  const used = new Set(lesson.parts.flatMap(shapesUsed))
  const missing: Shape[] = lesson.shapes.filter((shape) => used.has(shape.name) && !shown.has(shape.name))
  const plays = ({ kind }: DocumentBlock): boolean => kind === 'part-head' || kind === 'systems' || kind === 'cards'
  const at = flow.findIndex((block) => withInner(block).some(plays))
  if (missing.length === 0 || at < 0) return flow
  const before = flow[at - 1]
  const notes = margin.besideShapes(missing)
  if (before?.kind === 'shapes') {
    // One row of grids, not two: what the writer showed first, then the rest.
    const all: DocumentBlock = {
      kind: 'shapes',
      shapes: [...before.shapes, ...missing],
      notes: [...before.notes, ...notes],
    }
    return [...flow.slice(0, at - 1), all, ...flow.slice(at)]
  }
  return [...flow.slice(0, at), { kind: 'shapes', shapes: missing, notes }, ...flow.slice(at)]
}

function shapesUsed(part: Part): readonly string[] {
  return part.bars.flatMap((bar) =>
    bar.events.flatMap((event) => (event.kind === 'strike' && event.target.shape !== null ? [event.target.shape] : [])),
  )
}
