import type { Element } from 'hast'
import type { Drawing } from '../../drawing/drawing.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import type { NoteValue, TempoMark } from '../../page/document/document-block.ts'
import { drawingNode, el, spoken } from './nodes.ts'
import type { PageContext } from './page-context.ts'

/** Notes for tempos, and the dot. Source: SMuFL 1.4, range "Metronome marks". */
const SIGNS: Readonly<Record<NoteValue['base'], string>> = {
  1: '\ueca2',
  2: '\ueca3',
  4: '\ueca5',
  8: '\ueca7',
  16: '\ueca9',
  32: '\uecab',
}
const DOT = '\uecb7'
const SIZE_PT = 14

/** A tempo as printed: the note drawn, the equals sign, the number; a screen reader hears it as words. */
export function tempoWords(tempo: TempoMark, context: PageContext): Element {
  const drawing = noteDrawing(tempo.note, context.fonts)
  context.drawings.push(drawing)
  const goal =
    tempo.goalBpm === null || tempo.goalBpm === tempo.bpm
      ? ''
      : ` ${context.words.upTo(tempo.goalBpm)}`.replace(' ', '\u00a0')
  return el('span', 'tempo', [
    spoken(context.words.tempo(tempo)),
    {
      type: 'element',
      tagName: 'span',
      properties: { ariaHidden: 'true' },
      children: [drawingNode(drawing, '', context.fonts), { type: 'text', value: `\u00a0=\u00a0${tempo.bpm}${goal}` }],
    },
  ])
}

/** The note alone, in a box that ends at its base line. */
function noteDrawing({ base, dotted }: NoteValue, fonts: FontSet): Drawing {
  const text = `${SIGNS[base]}${dotted ? `\u200a${DOT}` : ''}`.replace('\u200a', '')
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
