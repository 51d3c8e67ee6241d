import type { Shape } from '@barwise/parser'
import { pointsOf } from '../../drawing/lengths.ts'
import { trueSigns } from '../../drawing/true-signs.ts'
import { drawGridRow } from '../../grids/draw-grid.ts'
import { spokenShapeName } from '../../steps/speak/voice.ts'
import { shapeAnchor } from '../document/anchors.ts'
import { gripStrings } from '../document/grip-strings.ts'
import type { MarginNote } from '../document/margin-note.ts'
import { shapeAdvice } from '../document/shape-advice.ts'
import { setPlain } from '../document/typography.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { PageItem, StructNode } from './page-content.ts'
import { moveItems, type Row, row, spaceRows, stackRows } from './row.ts'
import { setMarginNotes } from './set-margin-notes.ts'
import { setParagraph } from './set-text.ts'
import { say, type TextRun } from './text-run.ts'

/** Least room between the boxes of two grids. */
const GUTTER = pointsOf(1)
/** From the advice down to the notes on the shapes. */
const NOTES_GAP = pointsOf(2.2)
/** The widest column of a grid and its advice, where not so many stand in a row that they share it evenly. */
const COLUMN = pointsOf(40)

/** Grids side by side, as many as the width holds, all of one size on common base lines. A grid and its advice are never parted. */
export function setShapes(
  shapes: readonly Shape[],
  area: Area,
  context: LayoutContext,
  given: { readonly perRow?: number; readonly notes?: readonly MarginNote[] } = {},
): readonly Row[] {
  const { lesson, fonts, words, style } = context
  const grids = drawGridRow(shapes, {
    instrument: lesson.instrument,
    fonts,
    scale: style.gridScale,
    mirrored: style.mirrored,
    below: 'notes',
    impliesWord: null,
    bNatural: words.bNatural,
  })
  const gridWidth = Math.max(1, ...grids.map(({ drawing }) => drawing.width))
  const fits = Math.max(1, Math.floor((area.width + GUTTER) / (gridWidth + GUTTER)))
  const rowCount = Math.ceil(shapes.length / Math.min(fits, given.perRow ?? fits))
  const perRow = Math.ceil(shapes.length / rowCount)
  const even = (area.width - GUTTER * (perRow - 1)) / perRow
  const column = perRow >= 4 || style.large ? even : Math.min(COLUMN, even)
  const rows: Row[] = []
  for (let from = 0; from < shapes.length; from += perRow) {
    const items: PageItem[] = []
    let height = 0
    shapes.slice(from, from + perRow).forEach((shape, index) => {
      const grid = grids[from + index]
      if (grid === undefined) return
      const x = index * (column + GUTTER)
      const node: StructNode = {
        role: 'Figure',
        parent: area.parent,
        alt: words.grid(spokenShapeName(shape.name), gripStrings(shape)),
      }
      items.push({ kind: 'anchor', y: 0, name: shapeAnchor(context.lessonId, shape.name) })
      items.push({ kind: 'figure', x, y: 0, drawing: grid.drawing, node })
      const advice = setPlain(shapeAdvice(shape, lesson.instrument, words), words)
      let bottom = grid.drawing.height
      const runs = adviceRuns(shape, advice, context)
      if (runs.length > 0) {
        const set = stackRows(
          setParagraph(
            runs,
            { role: 'P', size: style.small, balanced: true },
            { width: column - pointsOf(style.large ? 6 : 1.6), parent: area.parent },
            context,
          ),
        )
        items.push(...moveItems(set.items, x + pointsOf(1.6), bottom + 3))
        bottom += 3 + set.height
      }
      height = Math.max(height, bottom)
    })
    rows.push(row(height, items, { before: 9 * style.ease, after: 9 * style.ease }))
  }
  const { notes = [] } = given
  if (notes.length === 0) return rows
  const narrow: Area = { ...area, width: Math.min(area.width, style.measure) }
  const set = spaceRows(setMarginNotes(notes, narrow, context), NOTES_GAP * style.ease, 9 * style.ease)
  return [
    ...rows.map((each, index) => (index < rows.length - 1 ? each : { ...each, after: 0, keepNext: true })),
    ...set,
  ]
}

/** The symbol a shape only implies, in italics, and which finger keeps which string quiet. */
function adviceRuns(shape: Shape, advice: string, { words, style }: LayoutContext): readonly TextRun[] {
  const { size } = style.small
  const implied =
    shape.implied && shape.label !== null
      ? [say(`${words.implies(trueSigns(shape.label))}. `, 'sans-italic', size)]
      : []
  return advice === '' ? implied : [...implied, say(advice, 'sans', size)]
}
