import { pointsOf } from '../../drawing/lengths.ts'
import type { LessonHead, NoteValue, TempoMark } from '../document/document-block.ts'
import type { PageWords } from '../document/page-words.ts'
import { fourStrokes } from './four-strokes.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { type Row, row } from './row.ts'
import { BASE_OF_LEADING, lineItem, setParagraph } from './set-text.ts'
import { say, type TextRun } from './text-run.ts'

/** Note values as they stand in a tempo mark (SMuFL 1.4, range "Metronome marks"), and the dot. */
const NOTE_SIGNS: Readonly<Record<NoteValue['base'], string>> = {
  1: '\uECA2',
  2: '\uECA3',
  4: '\uECA5',
  8: '\uECA7',
  16: '\uECA9',
  32: '\uECAB',
}
/** A note value is as high as one and a half capitals of the words beside it. */
const NOTE_SIZE = 1.2
const DOT = '\uECB7'

/** A tempo as runs: the note value drawn, "= 92", and the tempo to reach. */
export function tempoRuns(tempo: TempoMark, size: number, words: PageWords): readonly TextRun[] {
  const note = NOTE_SIGNS[tempo.note.base] + (tempo.note.dotted ? DOT : '')
  const goal =
    tempo.goalBpm === null || tempo.goalBpm === tempo.bpm ? '' : ` ${words.upTo(tempo.goalBpm).replace(' ', '\u00a0')}`
  return [say(note, 'sans', size * NOTE_SIZE), say(`\u00a0=\u00a0${tempo.bpm}${goal}`, 'sans', size)]
}

/** A section's rule and the line under it: its name, and what is said beside it. Never the last thing on a page. */
export function setSection(
  section: {
    readonly title: string
    readonly anchor: string | null
    readonly tempo: TempoMark | null
    readonly about: string
    /** More items of the line, at the right. */
    readonly right?: readonly PageItem[]
    readonly level?: 2 | 3
  },
  area: Area,
  context: LayoutContext,
): Row {
  const { style } = context
  const rule = fourStrokes(area.width, style.rule.section, style.rule.gap)
  const base = pointsOf(1.3) + style.body.leading * BASE_OF_LEADING + 0.5
  const level = section.level ?? 2
  const heading: StructNode = { role: level === 2 ? 'H2' : 'H3', parent: area.parent }
  const title = lineItem(
    [say(section.title, 'sans-bold', style.body.size, { ink: 'accent' })],
    { x: 0, y: base },
    heading,
    context,
  )
  const items: PageItem[] = [
    { kind: 'figure', x: 0, y: 0, drawing: rule, node: null },
    { kind: 'outline', y: 0, title: section.title, level },
    title.item,
  ]
  if (section.anchor !== null) items.push({ kind: 'anchor', y: 0, name: section.anchor })
  let x = title.width + pointsOf(3.4)
  const said: StructNode = { role: 'P', parent: area.parent }
  if (section.tempo !== null) {
    const tempo = lineItem(tempoRuns(section.tempo, style.body.size, context.words), { x, y: base }, said, context)
    items.push(tempo.item)
    x += tempo.width + pointsOf(3.4)
  }
  if (section.about !== '') {
    items.push(lineItem([say(section.about, 'sans', style.small.size)], { x, y: base }, said, context).item)
  }
  items.push(...(section.right ?? []))
  return row(base + style.body.leading * (1 - BASE_OF_LEADING), items, {
    before: pointsOf(4),
    after: pointsOf(1),
    keepNext: true,
  })
}

/** The lesson's title, the line under it, the rule and the facts. */
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
      ...each.items.map((item) => (item.kind === 'line' ? { ...item, x: item.x - style.title.size * 0.045 } : item)),
    ],
    startsPage: index === 0 ? given.startsPage : 'no',
  }))
  if (head.subtitle !== null) {
    rows.push(
      ...setParagraph(
        [say(head.subtitle, 'serif-italic', style.display.size)],
        { role: 'P', size: { size: style.display.size, leading: 18 }, hyphenate: false },
        area,
        context,
      ).map((each) => ({ ...each, keepNext: true })),
    )
  }
  rows.push(factsRow(head, area, context))
  return rows
}

/** The four-stroke rule and the facts under it, parted by short upright lines. */
function factsRow(head: LessonHead, area: Area, context: LayoutContext): Row {
  const { style } = context
  const items: PageItem[] = [
    { kind: 'figure', x: 0, y: 0, drawing: fourStrokes(area.width, style.rule.head, style.rule.gap), node: null },
  ]
  const node: StructNode = { role: 'P', parent: area.parent }
  const groups = head.facts.map((fact) =>
    fact.kind === 'tempo'
      ? tempoRuns(fact.tempo, style.body.size, context.words)
      : [say(fact.text, 'sans', style.body.size)],
  )
  const [gap, leading] = [pointsOf(4), style.body.leading]
  let [x, y] = [0, pointsOf(2.3) + leading * BASE_OF_LEADING]
  for (const runs of groups) {
    const { width } = lineItem(runs, { x: 0, y: 0 }, null, context)
    if (x > 0 && x + 2 * gap + width > area.width) [x, y] = [0, y + leading]
    if (x > 0) {
      items.push({ kind: 'figure', x: x + gap - 0.35, y: y - 8.4, drawing: upright(9.2), node: null })
      x += 2 * gap
    }
    items.push(lineItem(runs, { x, y }, node, context).item)
    x += width
  }
  const height = groups.length === 0 ? style.rule.head : y + leading * (1 - BASE_OF_LEADING)
  return row(height, items, { before: pointsOf(2.6), after: pointsOf(3.6), keepNext: true })
}

function upright(height: number): Extract<PageItem, { kind: 'figure' }>['drawing'] {
  return {
    kind: 'drawing',
    width: 0.7,
    height,
    items: [
      {
        kind: 'path',
        role: 'rule',
        data: [0, 0.35, 0, 1, 0.35, height],
        paint: 'stroke',
        lineWidth: 0.7,
        dash: [],
        ink: 'ink',
      },
    ],
  }
}
