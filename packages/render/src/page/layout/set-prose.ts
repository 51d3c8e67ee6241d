import { pointsOf } from '../../drawing/lengths.ts'
import { line } from '../../drawing/shapes.ts'
import { answerAnchor } from '../document/anchors.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { plainText } from '../document/typography.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import { withLeftStroke } from './left-stroke.ts'
import type { StructNode, StructRole } from './page-content.ts'
import { indentRows, type Row, row, spaceRows } from './row.ts'
import { setImages } from './set-image.ts'
import { setTable } from './set-table.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { inlineRuns, SANS, SERIF, say } from './text-run.ts'

/** Sets blocks that hold music or figures; handed in, so that prose knows nothing of them. */
export type SetOther = (block: DocumentBlock, area: Area, context: LayoutContext) => readonly Row[]

/** Blocks as rows, in order. Paragraphs that follow each other are parted by an indent, as in a book. */
export function setBlocks(
  blocks: readonly DocumentBlock[],
  area: Area,
  context: LayoutContext,
  other: SetOther,
): readonly Row[] {
  return blocks.flatMap((block, index) => {
    const rows = setBlock(block, { before: blocks[index - 1] ?? null }, area, context, other)
    const next = blocks[index + 1]
    if (next === undefined || !leadsTo(block, next, context)) return rows
    return rows.map((each, at) => (at === rows.length - 1 ? { ...each, keepNext: true } : each))
  })
}

/** Whether a paragraph speaks of what comes next: it ends in a colon, or a figure or a table follows. */
function leadsTo(block: DocumentBlock, next: DocumentBlock, { words }: LayoutContext): boolean {
  if (block.kind !== 'paragraph') return false
  if (plainText(block.children, words).trimEnd().endsWith(':')) return true
  return next.kind === 'blank' || next.kind === 'strip' || next.kind === 'systems' || next.kind === 'table'
}

function setBlock(
  block: DocumentBlock,
  place: { readonly before: DocumentBlock | null },
  area: Area,
  context: LayoutContext,
  other: SetOther,
): readonly Row[] {
  const { style } = context
  const narrow: Area = { ...area, width: Math.min(area.width, style.measure) }
  switch (block.kind) {
    case 'heading':
      return setHeading(block, narrow, context)
    case 'paragraph': {
      // In large print paragraphs are parted by white, which is seen sooner than an indent.
      const { before } = place
      const afterWords = before?.kind === 'paragraph' && before.children.some((inline) => inline.kind !== 'image')
      const follows = afterWords && !style.large
      const runs = inlineRuns(block.children, {
        links: context.links,
        words: context.words,
        voice: SERIF,
        size: style.body.size,
      })
      const rows = setParagraph(
        runs,
        { role: 'P', size: style.body, ...(follows ? { indent: style.body.leading } : {}) },
        narrow,
        context,
      )
      return [...spaceRows(rows, follows ? 0 : 5 * style.ease, 0), ...setImages(block.children, area, context)]
    }
    case 'list': {
      const nested = area.parent.role === 'LBody' && block.tight
      return spaceRows(setList(block, narrow, context, other), nested ? 0 : 5 * style.ease, nested ? 0 : 5 * style.ease)
    }
    case 'quote': {
      const node: StructNode = { role: 'BlockQuote', parent: area.parent }
      const inset = pointsOf(6) * style.ease
      const rows = setBlocks(block.blocks, { width: narrow.width - 2 * inset, parent: node }, context, other)
      return spaceRows(indentRows(rows, inset), 7 * style.ease, 7 * style.ease)
    }
    case 'code-block':
      return setCode(block.text, narrow, context)
    case 'rule':
      return [ornament(narrow.width)]
    case 'table':
      return setTable(block, area, context)
    case 'container':
      return setContainer(block, narrow, context, other)
    case 'answer-note': {
      const link = { kind: 'anchor', name: answerAnchor(context.lessonId, block.number, 'answer') } as const
      const rows = setParagraph(
        [say(block.text, 'sans', style.small.size, { link })],
        { role: 'P', size: style.small },
        narrow,
        context,
      )
      return spaceRows(
        rows.map((each, i) =>
          i > 0 ? each : { ...each, items: [...each.items, { kind: 'anchor', y: 0, name: block.anchor }] },
        ),
        4,
        4,
      )
    }
    case 'page-break':
      return [row(0, [], { startsPage: 'any' })]
    default:
      return other(block, area, context)
  }
}

function setHeading(
  block: Extract<DocumentBlock, { kind: 'heading' }>,
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { style } = context
  const size = block.level === 2 ? style.display : style.body
  const bold = block.level <= 3
  const runs = inlineRuns(block.children, {
    links: context.links,
    words: context.words,
    voice: SANS,
    size: size.size,
    bold,
    italic: !bold,
  })
  const role = `H${block.level}` as StructRole
  const rows = setParagraph(runs, { role, size, hyphenate: false, balanced: true }, area, context)
  const title = plainText(block.children, context.words)
  const held = rows.map((each, index) => ({
    ...each,
    keepNext: true,
    items: index === 0 ? [...each.items, { kind: 'outline', y: 0, title, level: block.level } as const] : each.items,
  }))
  return spaceRows(held, (block.level === 2 ? 16 : 11) * style.ease, 4 * style.ease)
}

/** Items with their number or bullet in the margin of the list. Tight lists stand close, loose ones with a little room. */
function setList(
  block: Extract<DocumentBlock, { kind: 'list' }>,
  area: Area,
  context: LayoutContext,
  other: SetOther,
): readonly Row[] {
  const { style } = context
  const list: StructNode = { role: 'L', parent: area.parent }
  const inset = (block.ordered && block.start + block.items.length > 10 ? 20 : 15) * style.ease
  return block.items.flatMap((item, index) => {
    const li: StructNode = { role: 'LI', parent: list }
    const label: StructNode = { role: 'Lbl', parent: li }
    const body: StructNode = { role: 'LBody', parent: li }
    const rows = indentRows(setBlocks(item.blocks, { width: area.width - inset, parent: body }, context, other), inset)
    const sign = block.ordered ? `${block.start + index}.` : '•'
    const mark = lineItem(
      [say(sign, 'serif', style.body.size)],
      { x: inset - 5 * style.ease, y: style.body.leading * BASE_OF_LEADING, align: 'right' },
      label,
      context,
    )
    const first: Row = rows[0] ?? row(style.body.leading, [])
    const lines = [{ ...first, items: [mark.item, ...first.items], before: 0 }, ...rows.slice(1)]
    return spaceRows(lines, (block.tight ? 0 : 4) * style.ease, 0).map((each, at) =>
      at === 0 && block.tight ? { ...each, before: 0 } : each,
    )
  })
}

function setCode(text: string, area: Area, context: LayoutContext): readonly Row[] {
  const { style } = context
  const node: StructNode = { role: 'Code', parent: { role: 'P', parent: area.parent } }
  const leading = style.small.leading + 1
  const inset = pointsOf(4)
  const letter = context.fonts.measure('mono', style.small.size, 'x').width
  const room = Math.max(10, Math.floor((area.width - inset) / letter))
  const rows = text
    .replace(/\n$/, '')
    .split('\n')
    .flatMap((written) => inPieces(written, room))
    .map((written) => {
      const { item } = lineItem(
        [say(written === '' ? '\u00a0' : written.replaceAll(' ', '\u00a0'), 'mono', style.small.size)],
        { x: inset, y: leading * BASE_OF_LEADING },
        node,
        context,
      )
      return row(leading, [item])
    })
  return spaceRows(rows, 7 * style.ease, 7 * style.ease)
}

/** A line of code that is too long goes on under itself, two letters in. */
function inPieces(written: string, room: number): readonly string[] {
  if (written.length <= room) return [written]
  return [written.slice(0, room), ...inPieces(`  ${written.slice(room)}`, room)]
}

/** The writer's thematic break: one short stroke. */
function ornament(width: number): Row {
  const drawing = {
    kind: 'drawing' as const,
    width: 60,
    height: 1,
    items: [line('rule', { x1: 0, y1: 0.5, x2: 60, y2: 0.5 }, 0.85)],
  }
  return row(1, [{ kind: 'figure', x: (width - 60) / 2, y: 0, drawing, node: null }], {
    before: 11,
    after: 11,
    atTop: 'drop',
  })
}

/** The teacher's notes and the care note: in sans, with a stroke along the left edge. */
function setContainer(
  block: Extract<DocumentBlock, { kind: 'container' }>,
  area: Area,
  context: LayoutContext,
  other: SetOther,
): readonly Row[] {
  const { style } = context
  const inset = pointsOf(4)
  const div: StructNode = { role: 'Div', parent: area.parent }
  const inner: Area = { width: area.width - inset, parent: div }
  const title = setParagraph(
    [say(block.title, 'sans-bold', style.small.size)],
    { role: 'P', size: style.small },
    inner,
    context,
  ).map((each) => ({ ...each, keepNext: true }))
  const body = setBlocks(block.blocks, inner, context, other)
  const rows = [...title, ...body.map((each, index) => (index === 0 ? { ...each, before: 1 } : each))]
  return spaceRows(withLeftStroke(rows, { inset, width: 1.4 }), 9, 9)
}
