import { pointsOf } from '../../drawing/lengths.ts'
import type { DocumentBlock, LessonDocument } from '../document/document-block.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { StructNode } from './page-content.ts'
import { moveItems, type Row, row, spaceRows, stackRows } from './row.ts'
import { setMusic } from './set-music.ts'
import { setBlocks } from './set-prose.ts'
import { setHead, setSection } from './set-section.ts'
import { setShapes } from './set-shapes.ts'

/** How a lesson takes its place: on which page it starts, and its level in the outline. */
export interface LessonPlace {
  readonly startsPage: Row['startsPage']
  readonly outlineLevel: number
  readonly parent: StructNode
  /** Whether its answers are printed at its own end, or left for the back of the book. */
  readonly answersHere: boolean
}

/** A lesson as rows: its head, the opening with prose beside grids where they fit, and the rest of the flow. */
export function layOutLesson(document: LessonDocument, place: LessonPlace, context: LayoutContext): readonly Row[] {
  const { style, words } = context
  const sect: StructNode = { role: 'Sect', parent: place.parent }
  const area: Area = { width: style.textWidth, parent: sect }
  const head = setHead(
    document.head,
    { anchor: document.id, startsPage: place.startsPage, level: place.outlineLevel },
    area,
    context,
  )
  const opening = setOpening(document.flow, area, context)
  const rest = setBlocks(document.flow.slice(opening.used), area, context, setMusic)
  const answers = place.answersHere ? setAnswers([document], area, context) : []
  const title =
    answers.length === 0
      ? []
      : [setSection({ title: words.answers, anchor: null, tempo: null, about: '' }, area, context)]
  return [...head, ...opening.rows, ...rest, ...title, ...answers]
}

/** Answers with their numbers, each linked back to where it was asked. */
export function setAnswers(documents: readonly LessonDocument[], area: Area, context: LayoutContext): readonly Row[] {
  return documents.flatMap((document) =>
    document.answers.flatMap((answer) => {
      const heading: DocumentBlock = {
        kind: 'heading',
        level: 3,
        children: [{ kind: 'text', text: answer.title, span: { start: 0, end: 0 } }],
      }
      const rows = setBlocks([heading, ...answer.blocks], area, context, setMusic)
      return rows.map((each, index) =>
        index > 0 ? each : { ...each, items: [...each.items, { kind: 'anchor', y: 0, name: answer.anchor } as const] },
      )
    }),
  )
}

const PROSE_WIDTH = pointsOf(77)
const GUTTER = pointsOf(6)
/** So many grids stand beside the words; more stand in a row of their own. */
const BESIDE = 3
/** The opening stands in two columns when neither is taller than this share of the page. */
const TALLEST = 0.45

/**
 * The opening of a lesson: words at the left, the grids they speak of at the right. Only where words and one row of shapes come first, both fit, and
 * the paper is wide enough; else both are set one under the other.
 */
function setOpening(
  flow: readonly DocumentBlock[],
  area: Area,
  context: LayoutContext,
): { readonly rows: readonly Row[]; readonly used: number } {
  const nothing = { rows: [], used: 0 }
  const used = flow.findIndex((block) => !isWords(block) && block.kind !== 'shapes')
  const opening = used < 0 ? flow : flow.slice(0, used)
  const shapeBlocks = opening.filter((block) => block.kind === 'shapes')
  const prose = opening.filter(isWords)
  const shapes = shapeBlocks.flatMap((block) => block.shapes)
  const notes = shapeBlocks.flatMap((block) => block.notes)
  if (context.style.large || shapes.length === 0 || prose.length === 0 || shapes.length > BESIDE) return nothing
  const right: Area = { width: area.width - PROSE_WIDTH - GUTTER, parent: area.parent }
  if (right.width < pointsOf(60)) return nothing
  const words = stackRows(setBlocks(prose, { width: PROSE_WIDTH, parent: area.parent }, context, () => []))
  const grids = stackRows(setShapes(shapes, right, context, { perRow: 3, notes }))
  const height = Math.max(words.height, grids.height)
  if (height > context.style.height * TALLEST || words.height > grids.height * 2.2) return nothing
  const items = [...words.items, ...moveItems(grids.items, PROSE_WIDTH + GUTTER, 0)]
  return { rows: spaceRows([row(height, items)], 0, pointsOf(1)), used: used < 0 ? flow.length : used }
}

function isWords(block: DocumentBlock): boolean {
  return block.kind === 'paragraph' || block.kind === 'list' || block.kind === 'quote'
}
