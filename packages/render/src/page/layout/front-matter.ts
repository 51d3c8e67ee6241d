import type { Book } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { composeProse } from '../document/compose-prose.ts'
import type { DocumentBlock } from '../document/document-block.ts'
import { setGiven, setPlain } from '../document/typography.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { LessonStart } from './lesson-start.ts'
import type { LaidPage, PageItem, StructNode } from './page-content.ts'
import { framePage, textHeight } from './page-frame.ts'
import { type FilledPage, paginate } from './paginate.ts'
import { roman } from './roman.ts'
import { moveItems, type Row, row, spaceRows, stackRows } from './row.ts'
import { setBlocks } from './set-prose.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/** The pages before the lessons: title, imprint, contents. Numbered in roman; an even count, so that page 1 is a right-hand one. */
export function setFrontMatter(
  book: Book,
  starts: readonly LessonStart[],
  parent: StructNode,
  context: LayoutContext,
): readonly LaidPage[] {
  const area: Area = { width: context.style.textWidth, parent }
  const contents = paginate(setContents(book, starts, area, context), {
    height: textHeight(context.style),
    firstNumber: 3,
  })
  const filled: FilledPage[] = [titlePage(book, area, context), imprintPage(book, area, context), ...contents]
  if (filled.length % 2 === 1) filled.push({ items: [], filled: 0, blank: true })
  return filled.map((page, index) => {
    const number = index + 1
    const text = index > 2 ? context.words.contents : null
    return framePage(page, { text, label: roman(number), number, folio: index > 1 }, context)
  })
}

/** Title and author in the upper half, the four strokes between them. */
function titlePage(book: Book, area: Area, context: LayoutContext): FilledPage {
  const { style } = context
  const { words } = context
  const title = setPlain(book.settings.title, words)
  const subtitle = setGiven(book.settings.subtitle, words)
  const author = setGiven(book.settings.author, words)
  const size = { size: style.title.size * 1.3, leading: style.title.size * 1.36 }
  const rows: Row[] = [
    ...setParagraph(
      [say(title, 'serif-light', size.size)],
      { role: 'H1', size, hyphenate: false, balanced: true },
      area,
      context,
    ),
  ]
  if (subtitle !== null) {
    rows.push(
      ...spaceRows(
        setParagraph(
          [say(subtitle, 'serif-italic', style.subtitle.size)],
          { role: 'P', size: style.subtitle },
          area,
          context,
        ),
        6,
        0,
      ),
    )
  }
  const rule = fourStrokes(area.width, style.rule.head, style.rule.gap)
  rows.push(
    row(style.rule.head, [{ kind: 'figure', x: 0, y: 0, drawing: rule, node: null }], {
      before: 14 * style.ease,
      after: 12 * style.ease,
    }),
  )
  if (author !== null) {
    rows.push(...setParagraph([say(author, 'sans', style.body.size)], { role: 'P', size: style.body }, area, context))
  }
  if (context.editionName !== null) {
    const name = [say(context.editionName, 'sans-bold', style.body.size)]
    rows.push(...spaceRows(setParagraph(name, { role: 'P', size: style.body }, area, context), 6, 0))
  }
  const { items } = stackRows(rows)
  const outline: PageItem = { kind: 'outline', y: 0, title, level: 1 }
  return { items: [outline, ...moveItems(items, 0, textHeight(style) * 0.24)], filled: 0, blank: false }
}

/** Edition, licence, permissions and the care note, at the foot of the page behind the title. */
function imprintPage(book: Book, area: Area, context: LayoutContext): FilledPage {
  const { style, words } = context
  const { title, author, edition, licence, permissions } = book.settings
  const narrow: Area = { ...area, width: Math.min(area.width, pointsOf(105) * style.ease) }
  const lines = [
    author === null ? title : `${title}. ${author}.`,
    ...(context.editionName === null ? [] : [context.editionName]),
    ...(edition === null ? [] : [words.edition(edition)]),
    ...(licence === null ? [] : [words.licence(licence)]),
    ...(permissions === null ? [] : [permissions]),
  ]
  const rows = [
    ...lines.flatMap((text) =>
      spaceRows(
        setParagraph(
          [say(setPlain(text, words), 'sans', style.small.size)],
          { role: 'P', size: style.small },
          narrow,
          context,
        ),
        5 * style.ease,
        0,
      ),
    ),
    ...spaceRows(
      setParagraph([say(words.care, 'sans-bold', style.small.size)], { role: 'P', size: style.small }, narrow, context),
      14 * style.ease,
      0,
    ),
    ...setParagraph([say(words.careNote, 'sans', style.small.size)], { role: 'P', size: style.small }, narrow, context),
  ]
  const { items, height } = stackRows(rows)
  return { items: moveItems(items, 0, textHeight(style) - height), filled: 0, blank: false }
}

/** The contents: the book's own words, then its parts and lessons with their pages, every line a link. */
function setContents(book: Book, starts: readonly LessonStart[], area: Area, context: LayoutContext): readonly Row[] {
  const { style, words } = context
  const narrow: Area = { ...area, width: style.large ? area.width : Math.min(area.width, pointsOf(150)) }
  const heading = setParagraph(
    [say(words.contents, 'serif-light', style.title.size)],
    { role: 'H1', size: style.title },
    area,
    context,
  ).map((each) => ({
    ...each,
    keepNext: true,
    items: [...each.items, { kind: 'outline', y: 0, title: words.contents, level: 1 } as const],
  }))
  const intros: readonly DocumentBlock[] = book.parts
    .filter((part) => part.heading === null)
    .flatMap((part) => composeProse(part.intro, book.settings.language))
  let toc: StructNode = { role: 'TOC', parent: area.parent }
  const waiting = book.parts.filter((part) => part.heading !== null)
  /** The lines of the next part, and of those without lessons before it; none when all are set. */
  const openParts = (): readonly Row[] => {
    const rows: Row[] = []
    for (let part = waiting.shift(); part !== undefined; part = waiting.shift()) {
      rows.push(...partLine(setPlain(part.heading ?? '', words), { ...narrow, parent: toc }, context))
      const own = setBlocks(
        composeProse(part.intro, book.settings.language),
        { ...narrow, parent: area.parent },
        context,
        () => [],
      )
      rows.push(...spaceRows(own, 2, 6 * style.ease))
      // Words stand between two stretches of the contents, not in one.
      if (own.length > 0) toc = { role: 'TOC', parent: area.parent }
      if (part.lessons.length > 0) break
    }
    return rows
  }
  const lines = starts.flatMap((start): readonly Row[] => {
    const opening = start.part === null && !start.apart ? [] : openParts()
    const set = contentsLine(start, { ...narrow, parent: toc }, context)
    return [...opening, start.apart ? { ...set, before: 16 * style.ease } : set]
  })
  const left = openParts()
  return [
    ...heading,
    ...spaceRows(
      setBlocks(intros, area, context, () => []),
      14 * style.ease,
      16 * style.ease,
    ),
    ...lines,
    ...left,
  ]
}

function partLine(title: string, area: Area, context: LayoutContext): readonly Row[] {
  const { style } = context
  const node: StructNode = { role: 'TOCI', parent: area.parent }
  const rows = setParagraph(
    [say(title, 'sans-bold', style.body.size, { ink: 'accent' })],
    { role: 'P', size: style.body, node: { role: 'P', parent: node } },
    area,
    context,
  )
  return spaceRows(
    rows.map((each) => ({ ...each, keepNext: true })),
    16 * style.ease,
    2,
  )
}

/** A lesson and its page. Its subtitle stands beside the title where both fit the line, else under it. */
function contentsLine(start: LessonStart, area: Area, context: LayoutContext): Row {
  const { body } = context.style
  const node: StructNode = { role: 'TOCI', parent: area.parent }
  const link = { kind: 'anchor', name: start.anchor } as const
  const height = body.leading + 3
  const y = height * BASE_OF_LEADING
  const title = say(start.title, 'serif', body.size, { link })
  const subtitle = start.subtitle === null ? [] : [say(`\u2003${start.subtitle}`, 'serif-italic', body.size, { link })]
  const left = lineItem([title, ...subtitle], { x: 0, y }, node, context)
  const page = [say(start.page, 'sans-semibold', body.size, { link })]
  const right = lineItem(page, { x: area.width, y, align: 'right' }, node, context)
  const room = area.width - right.width - body.size
  if (left.width <= room) return row(height, [left.item, right.item])
  const size = { size: body.size, leading: body.leading }
  const lines = stackRows(
    [[title], subtitle.map((run) => ({ ...run, text: run.text.trim() }))].flatMap((runs) =>
      setParagraph(
        runs,
        { role: 'TOCI', size, node, hyphenate: false, balanced: true },
        { ...area, width: room },
        context,
      ),
    ),
  )
  const [first, ...later] = moveItems(lines.items, 0, y - body.leading * BASE_OF_LEADING)
  return row(lines.height + 3, [...(first === undefined ? [] : [first]), right.item, ...later], { before: 4 })
}
