import type { Drawing } from '../../drawing/drawing.ts'
import { pointsOf } from '../../drawing/lengths.ts'
import { line } from '../../drawing/shapes.ts'
import type { LessonHead } from '../document/document-block.ts'
import { metronomeSigns, tempoFigures } from '../document/note-value.ts'
import type { PageWords } from '../document/page-words.ts'
import type { TempoMark } from '../document/tempo-mark.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { moveItems, type Row, row, spaceRows, stackRows } from './row.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { say, type TextRun } from './text-run.ts'

/** A note value is as high as one and a half capitals of the words beside it. */
const NOTE_SIZE = 1.2

/** A tempo as runs: the note value drawn, "= 92", and the tempo to reach. */
export function tempoRuns(tempo: TempoMark, size: number, words: PageWords): readonly TextRun[] {
  return [
    say(metronomeSigns(tempo.note), 'sans', size * NOTE_SIZE),
    say(`\u00a0${tempoFigures(tempo, words)}`, 'sans', size),
  ]
}

/** A section's rule and the line under it: its name, and what is said beside it, or below where the line is too short. Never the last thing on a page. */
export function setSection(
  section: {
    readonly title: string
    readonly anchor: string | null
    readonly tempo: TempoMark | null
    readonly about: string
    /** More items of the line, at the right. */
    readonly right?: readonly PageItem[]
  },
  area: Area,
  context: LayoutContext,
): Row {
  const { style } = context
  const { body, small, ease } = style
  const rule = fourStrokes(area.width, style.rule.section, style.rule.gap)
  const top = pointsOf(1.3) * ease + 0.5
  const gap = pointsOf(3.4) * ease
  const heading: StructNode = { role: 'H2', parent: area.parent }
  const name = [say(section.title, 'sans-bold', body.size, { ink: 'accent' })]
  const title = stackRows(
    setParagraph(name, { role: heading.role, size: body, node: heading, hyphenate: false }, area, context),
  )
  const said: StructNode = { role: 'P', parent: area.parent }
  const items: PageItem[] = [
    { kind: 'figure', x: 0, y: 0, drawing: rule, node: null },
    { kind: 'outline', y: 0, title: section.title, level: 2 },
    ...moveItems(title.items, 0, top),
  ]
  if (section.anchor !== null) items.push({ kind: 'anchor', y: 0, name: section.anchor })
  let [x, bottom] = [lineEnd(title.items.at(-1)) + gap, top + title.height]
  const below = body.leading * (1 - BASE_OF_LEADING)
  if (section.tempo !== null) {
    const runs = tempoRuns(section.tempo, body.size, context.words)
    const { width } = lineItem(runs, { x: 0, y: 0 }, null, context)
    if (x + width > area.width) [x, bottom] = [0, bottom + body.leading]
    items.push(lineItem(runs, { x, y: bottom - below }, said, context).item)
    x += width + gap
  }
  if (section.about !== '') {
    const runs = [say(section.about, 'sans', small.size)]
    const about = lineItem(runs, { x, y: bottom - below }, said, context)
    if (x + about.width <= area.width) items.push(about.item)
    else {
      const under = stackRows(setParagraph(runs, { role: 'P', size: small, node: said }, area, context))
      items.push(...moveItems(under.items, 0, bottom))
      bottom += under.height
    }
  }
  items.push(...(section.right ?? []))
  return row(bottom, items, { before: pointsOf(4) * ease, after: pointsOf(1) * ease, keepNext: true })
}

/** Where a line of text ends at the right. */
function lineEnd(item: PageItem | undefined): number {
  if (item?.kind !== 'line') return 0
  const last = item.fragments.at(-1)
  return item.x + (last === undefined ? 0 : last.dx + last.width)
}

/** The lesson's title, the line under it, who wrote it, the rule and the facts. */
export function setHead(
  head: LessonHead,
  given: { readonly anchor: string; readonly startsPage: Row['startsPage']; readonly level: number },
  area: Area,
  context: LayoutContext,
): readonly Row[] {
  const { style } = context
  const titleRows = setParagraph(
    [say(head.title, 'serif-light', style.title.size)],
    { role: 'H1', size: style.title, hyphenate: false, balanced: true },
    area,
    context,
  )
  const bearing = context.fonts.measure('serif-light', style.title.size, head.title.charAt(0)).left
  const rows: Row[] = titleRows.map((each, index) => ({
    ...each,
    keepNext: true,
    // The title's side bearing is taken back, so that its stem stands on the margin.
    items: [
      ...(index === 0
        ? ([
            { kind: 'anchor', y: 0, name: given.anchor },
            { kind: 'outline', y: 0, title: head.title, level: given.level },
          ] as const)
        : []),
      ...each.items.map((item) => (item.kind === 'line' ? { ...item, x: item.x - bearing } : item)),
    ],
    startsPage: index === 0 ? given.startsPage : 'no',
  }))
  if (head.subtitle !== null) {
    rows.push(
      ...setParagraph(
        [say(head.subtitle, 'serif-italic', style.subtitle.size)],
        { role: 'P', size: style.subtitle, hyphenate: false },
        area,
        context,
      ).map((each) => ({ ...each, keepNext: true })),
    )
  }
  if (head.author !== null) {
    const author = setParagraph(
      [say(head.author, 'sans', style.small.size)],
      { role: 'P', size: style.small },
      area,
      context,
    )
    rows.push(...spaceRows(author, pointsOf(0.8) * style.ease, 0).map((each) => ({ ...each, keepNext: true })))
  }
  rows.push(factsRow(head, area, context))
  return rows
}

/** The four-stroke rule and the facts under it, parted by short upright lines; a fact longer than a line stands in lines of its own. */
function factsRow(head: LessonHead, area: Area, context: LayoutContext): Row {
  const { style } = context
  const { size, leading } = style.body
  const items: PageItem[] = [
    { kind: 'figure', x: 0, y: 0, drawing: fourStrokes(area.width, style.rule.head, style.rule.gap), node: null },
  ]
  const node: StructNode = { role: 'P', parent: area.parent }
  const gap = pointsOf(4) * Math.sqrt(style.ease)
  let [x, top] = [0, pointsOf(2.3) * style.ease]
  for (const fact of head.facts) {
    const runs = fact.kind === 'tempo' ? tempoRuns(fact.tempo, size, context.words) : [say(fact.text, 'sans', size)]
    const { width } = lineItem(runs, { x: 0, y: 0 }, null, context)
    if (x > 0 && x + 2 * gap + width > area.width) [x, top] = [0, top + leading]
    if (width > area.width) {
      const lines = stackRows(setParagraph(runs, { role: 'P', size: style.body, node }, area, context))
      items.push(...moveItems(lines.items, 0, top))
      ;[x, top] = [area.width, top + lines.height - leading]
      continue
    }
    const base = top + leading * BASE_OF_LEADING
    if (x > 0) {
      const drawing = upright(size * 0.876, 0.7 * Math.sqrt(style.ease))
      items.push({ kind: 'figure', x: x + gap - drawing.width / 2, y: base - size * 0.8, drawing, node: null })
      x += 2 * gap
    }
    items.push(lineItem(runs, { x, y: base }, node, context).item)
    x += width
  }
  const height = head.facts.length === 0 ? style.rule.head : top + leading
  return row(height, items, { before: pointsOf(2.6) * style.ease, after: pointsOf(3.6) * style.ease, keepNext: true })
}

function upright(height: number, width: number): Drawing {
  return {
    kind: 'drawing',
    width,
    height,
    items: [line('rule', { x1: width / 2, y1: 0, x2: width / 2, y2: height }, width)],
  }
}
