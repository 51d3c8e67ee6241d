import type { Shape } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { pointsOf } from '../../drawing/lengths.ts'
import { drawGridRow } from '../../grids/draw-grid.ts'
import { shapeAnchor } from '../../page/document/anchors.ts'
import { gripStrings } from '../../page/document/grip-strings.ts'
import { shapeAdvice } from '../../page/document/shape-advice.ts'
import { setPlain } from '../../page/document/typography.ts'
import { spokenShapeName } from '../../steps/speak/voice.ts'
import { fitted } from './fit.ts'
import { drawingNode, el } from './nodes.ts'
import { claimId, type PageContext } from './page-context.ts'
import { shapesAnchor } from './section-anchors.ts'
import { chordName } from './words.ts'

/** The width of a grid that fills its place in the row: more than any but one with a long name. */
const COLUMN_PT = pointsOf(34)

/** A row of chord grids, all of one size. The strings and fingers of each are told in words for those who do not see it; notes on them stand under the row. */
export function shapesRow(shapes: readonly Shape[], notes: readonly Element[], context: PageContext): Element {
  const grids = drawGridRow(shapes, {
    instrument: context.lesson.instrument,
    fonts: context.fonts,
    mirrored: context.screen.mirrored,
    impliesWord: null,
    bNatural: context.words.bNatural,
  })
  const figures = shapes.flatMap((shape, index) => {
    const grid = grids[index]
    if (grid === undefined) return []
    context.drawings.push(grid.drawing)
    const id = claimId(shapeAnchor(context.document.id, shape.name), context)
    const label = context.words.grid(spokenShapeName(shape.name), gripStrings(shape))
    const implied = shape.implied && shape.label !== null ? impliedLine(shape.label, context) : []
    const advice = setPlain(shapeAdvice(shape, context.lesson.instrument, context.words), context.words)
    const advised = advice === '' ? [] : [el('p', '', [advice])]
    const caption = [...implied, ...advised]
    return [
      h(
        'figure',
        { className: ['shape'], ...(id === undefined ? {} : { id }) },
        fitted(drawingNode(grid.drawing, label, context.fonts), grid.drawing, COLUMN_PT),
        ...(caption.length === 0 ? [] : [el('figcaption', 'advice', caption)]),
      ),
    ]
  })
  const first = claimId(shapesAnchor(context.document.id), context)
  return h(
    'div',
    { className: ['shapes', `across-${columnsFor(shapes.length)}`], ...(first === undefined ? {} : { id: first }) },
    ...figures,
    ...notes,
  )
}

/** In how many columns grids stand: at most five, and the last row as full as it can be. */
function columnsFor(count: number): number {
  return Math.max(1, Math.ceil(count / Math.ceil(count / 5)))
}

function impliedLine(label: string, context: PageContext): readonly Element[] {
  const [before = '', after = ''] = context.words.implies('\u0000').split('\u0000')
  return [el('p', 'implies', [before, chordName(label), after])]
}
