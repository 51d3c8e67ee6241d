import {
  Accidental,
  Beam,
  Formatter,
  Fraction,
  type RenderContext,
  Stave,
  StaveNote,
  Stem,
  TabNote,
  TabStave,
  Voice,
} from 'vexflow/core'
import type { FontSet } from '../../fonts/font-set.ts'
import type { Column } from '../layout/column.ts'
import type { Piece } from '../layout/piece.ts'
import { useFonts } from './headless.ts'

/**
 * Builds, formats and draws the bars of a system with VexFlow alone: its own spacing, beams and tab, none of ours. Measure against it
 * what our whole costs; the drawing is not for print.
 */
export function drawBareSystem(pieces: readonly Piece[], context: RenderContext, fonts: FontSet): void {
  useFonts(fonts)
  let x = 0
  for (const piece of pieces) {
    const columns = piece.built.columns
    const stave = new Stave(x, 0, 400)
    const tabStave = new TabStave(x, 120, 400)
    if (x === 0) {
      stave.addClef('treble', undefined, '8vb')
      tabStave.addTabGlyph()
    }
    stave.setContext(context).draw()
    tabStave.setContext(context).draw()
    const notes = columns.map(bareNote)
    const tabs = columns.map(bareTab)
    const voice = new Voice().setMode(Voice.Mode.SOFT).addTickables(notes)
    const tabVoice = new Voice().setMode(Voice.Mode.SOFT).addTickables(tabs)
    const beams = Beam.generateBeams(notes, { groups: [new Fraction(1, 4)] })
    new Formatter().joinVoices([voice]).joinVoices([tabVoice]).format([voice, tabVoice], 320)
    voice.draw(context, stave)
    tabVoice.draw(context, tabStave)
    for (const beam of beams) beam.setContext(context).draw()
    x += 400
  }
}

const LETTERS = 'cdefgab'
const SIGNS = { [-2]: 'bb', [-1]: 'b', 0: 'n', 1: '#', 2: '##' } as const

function bareNote(column: Column): StaveNote {
  const heads = [...column.heads].reverse()
  const keys = heads.map(({ y }) => {
    const diatonic = 38 - Math.round(2 * y)
    return `${LETTERS[((diatonic % 7) + 7) % 7]}/${Math.floor(diatonic / 7)}`
  })
  const note = new StaveNote({
    keys,
    duration: `${column.written.value.base}${column.kind === 'rest' ? 'r' : ''}`,
    dots: column.written.value.dots,
    stemDirection: column.stem === 'up' ? Stem.UP : Stem.DOWN,
  })
  heads.forEach(({ accidental }, i) => {
    if (accidental !== null) note.addModifier(new Accidental(SIGNS[accidental]), i)
  })
  return note
}

function bareTab(column: Column): TabNote {
  const figures = column.tab.figures.map(({ string, text }) => ({ str: string, fret: text }))
  const crosses = column.tab.crosses.map((string) => ({ str: string, fret: 'X' }))
  const positions = [...figures, ...crosses]
  return new TabNote({
    positions: positions.length === 0 ? [{ str: 1, fret: '' }] : positions,
    duration: String(column.written.value.base),
    dots: column.written.value.dots,
  })
}
