import type { Element } from 'hast'
import type { Drawing } from '../../drawing/drawing.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import { metronomeSigns, tempoFigures } from '../../page/document/note-value.ts'
import type { NoteValue, TempoMark } from '../../page/document/tempo-mark.ts'
import { drawingNode, el, spoken } from './nodes.ts'
import type { PageContext } from './page-context.ts'

const SIZE_PT = 14

/** A tempo as printed: the note drawn, the equals sign, the number; a screen reader hears it as words. */
export function tempoWords(tempo: TempoMark, context: PageContext): Element {
  const drawing = noteDrawing(tempo.note, context.fonts)
  context.drawings.push(drawing)
  return el('span', 'tempo', [
    spoken(context.words.tempo(tempo)),
    {
      type: 'element',
      tagName: 'span',
      properties: { ariaHidden: 'true' },
      children: [
        drawingNode(drawing, '', context.fonts),
        { type: 'text', value: `\u00a0${tempoFigures(tempo, context.words)}` },
      ],
    },
  ])
}

/** The note alone, in a box that ends at its base line. */
function noteDrawing(note: NoteValue, fonts: FontSet): Drawing {
  const text = metronomeSigns(note)
  const ink = fonts.measure('music', SIZE_PT, text)
  return {
    kind: 'drawing',
    width: ink.right - Math.min(0, ink.left),
    height: ink.bottom - ink.top,
    items: [
      {
        kind: 'glyphs',
        role: 'tempo',
        face: 'music',
        size: SIZE_PT,
        text,
        x: -Math.min(0, ink.left),
        y: -ink.top,
        ink: 'ink',
      },
    ],
  }
}
