import type { DrawnItem } from '../drawing/drawing.ts'
import { setText } from '../drawing/set-text.ts'
import { cross, frame, polygon, rect } from '../drawing/shapes.ts'
import type { FontSet } from '../fonts/font-set.ts'
import type { StripCell } from './strip-cells.ts'
import type { StripStyle } from './strip-style.ts'

/** A cell on paper: its centre and width, the top of the blocks and the floor they stand on. Points. */
export interface CellPlace {
  readonly x: number
  readonly cell: number
  readonly top: number
  readonly floor: number
}

/** Height of what lasts, and of a softer stroke, against a full block: height is attack, low is lasting. */
const LOW = 0.26
const SOFT = 0.6

/** Half the width of a block in a cell. */
export function blockHalf(cell: number, style: StripStyle): number {
  return (Math.min(cell, style.cell * 1.35) * style.blockShare) / 2
}

/** The block of a cell with its word; what lasts after it is drawn by `drawRing`. */
export function drawBlock(cell: StripCell, place: CellPlace, style: StripStyle, fonts: FontSet): readonly DrawnItem[] {
  const { x, top, floor } = place
  const half = blockHalf(place.cell, style)
  const height = floor - top
  const soft = cell.event.kind !== 'rest' && cell.event.marks.includes('ghost')
  const y = soft ? floor - height * SOFT : top
  const [left, right] = [x - half, x + half]
  switch (cell.state) {
    case 'struck':
      return [
        rect('strip-block', { x: left, y, width: 2 * half, height: floor - y }),
        ...word(cell.word, { ...place, top: y }, style, fonts),
      ]
    case 'short': {
      // Half as wide, but never so narrow that its word would not fit.
      const width = Math.min(Math.max(half, wordWidth(cell.word, style, fonts)), half * 1.8)
      return [
        rect('strip-block', { x: left, y, width, height: floor - y }),
        ...word(
          cell.word,
          { ...place, top: y, x: left + width / 2, cell: (width * 1.06) / style.blockShare },
          style,
          fonts,
        ),
      ]
    }
    case 'slid-into':
      return [
        polygon('strip-block', [left - half * 0.12, floor, left + half * 0.8, y, right, y, right, floor]),
        ...word(cell.word, { ...place, top: y, x: x + half * 0.22 }, style, fonts),
      ]
    case 'unstruck': {
      // The ramp rises out of the block before, so that it reads as one sound changing.
      const start = x - place.cell + blockHalf(place.cell, style) - half * 0.02
      const low = floor - height * LOW
      const crest = y + height * 0.18
      const points = [start, floor, start, low, left + half * 1.44, crest, right, crest, right, floor]
      return [
        polygon('strip-block', points),
        ...word(cell.word, { ...place, x: x + half * 0.14, top: floor - height * 0.68 }, style, fonts),
      ]
    }
    case 'scratch': {
      const arm = Math.min(height * 0.3, half) * (soft ? 0.7 : 1)
      return [cross('strip-block', { x, y: top + height * 0.52, armX: arm, armY: arm }, height * (soft ? 0.07 : 0.1))]
    }
    case 'silence':
      return [frame('strip-frame', { x: left, y: top, width: 2 * half, height: height - style.floor }, style.hair)]
    case 'ring':
    case 'after':
      return []
  }
}

/** The low band of what rings on, from one x to another. */
export function drawRing(from: number, to: number, place: Pick<CellPlace, 'top' | 'floor'>): DrawnItem {
  const height = (place.floor - place.top) * LOW
  return rect('strip-block', { x: from, y: place.floor - height, width: to - from, height })
}

/** The room a word takes in a narrow block: at a size two thirds of the usual, rim included. */
function wordWidth(text: string, style: StripStyle, fonts: FontSet): number {
  if (text === '') return 0
  const size = Math.max(style.word * 0.68, Math.min(style.leastText, style.word))
  const setting = { role: 'strip-word', face: 'sans-bold', size } as const
  return setText(text, { x: 0, y: 0 }, setting, fonts).measure.width * 1.08
}

/** A word reversed in a block, in the middle of it, made narrower when it would touch the rim. */
function word(text: string, place: CellPlace, style: StripStyle, fonts: FontSet): readonly DrawnItem[] {
  if (text === '') return []
  const setting = { role: 'strip-word', face: 'sans-bold', ink: 'paper', align: 'centre' } as const
  const full = setText(text, { x: 0, y: 0 }, { ...setting, size: style.word }, fonts).measure
  const room = 2 * blockHalf(place.cell, style) * 0.92
  const size = Math.max(Math.min(style.leastText, style.word), style.word * Math.min(1, room / full.width))
  const { measure } = setText(text, { x: 0, y: 0 }, { ...setting, size }, fonts)
  const capital = fonts.heights('sans-bold').capHeight * size
  const y = (place.top + place.floor) / 2 + capital / 2
  return setText(
    text,
    { x: place.x + (measure.width - measure.left - measure.right) / 2, y },
    { ...setting, size },
    fonts,
  ).runs
}
