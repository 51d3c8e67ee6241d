import { TICKS_PER_QUARTER } from '@barwise/parser'
import type { Drawing, DrawnItem } from '../drawing/drawing.ts'
import { setText } from '../drawing/set-text.ts'
import type { FontSet } from '../fonts/font-set.ts'
import { blockHalf, drawBlock, drawRing } from './draw-block.ts'
import { drawSwing } from './draw-swing.ts'
import type { CellState, StripCell } from './strip-cells.ts'
import { type StripStyle, stripStyle } from './strip-style.ts'

/** The signs a legend can explain, in the order it lists them. */
export const LEGEND_SIGNS = [
  'struck',
  'short',
  'softer',
  'ring',
  'unstruck',
  'slid-into',
  'scratch',
  'silence',
  'swing',
] as const
export type LegendSign = (typeof LEGEND_SIGNS)[number]

/** What each sign is called, in the lesson's language. */
export type LegendWords = Readonly<Record<LegendSign, string>>

/** The signs that cells use, in the order of the legend. */
export function signsInUse(cells: readonly StripCell[]): readonly LegendSign[] {
  const used = new Set<LegendSign>()
  for (const { state, swing, event, sounds, eventAt, at, ticks } of cells) {
    if (state !== 'after') used.add(state)
    if (state === 'struck' && eventAt + event.duration > at + ticks) used.add('ring')
    if (sounds && event.kind !== 'rest' && event.marks.includes('ghost')) used.add('softer')
    if (swing?.weight === 'thin') used.add('swing')
  }
  return LEGEND_SIGNS.filter((sign) => used.has(sign))
}

export interface DrawLegendInput {
  readonly signs: readonly LegendSign[]
  readonly fonts: FontSet
  readonly widthPt: number
  readonly words: LegendWords
  /** Size of the words; the signs are as high as their capitals and a little more. */
  readonly textPt?: number
}

/** The key to the strip: each sign with its words, in lines of the width given. Only the signs asked for are listed. */
export function drawLegend({ signs, fonts, widthPt, words, textPt = 8.5 }: DrawLegendInput): Drawing {
  const lead = textPt * 1.75
  const height = textPt * 1.32
  const items: DrawnItem[] = []
  let [x, y] = [0, 0]
  for (const sign of signs) {
    const icon = legendSign(sign, height, fonts)
    const word = setText(words[sign], { x: 0, y: 0 }, { role: 'text', face: 'sans', size: textPt }, fonts)
    const width = icon.width + textPt * 0.7 + word.measure.width
    if (x > 0 && x + width > widthPt) {
      x = 0
      y += lead
    }
    items.push(...icon.at(x, y))
    const base = y + height / 2 + fonts.heights('sans').capHeight * textPt * 0.5
    items.push(
      ...setText(
        words[sign],
        { x: x + icon.width + textPt * 0.7, y: base },
        { role: 'text', face: 'sans', size: textPt },
        fonts,
      ).runs,
    )
    x += width + textPt * 1.7
  }
  return { kind: 'drawing', width: widthPt, height: signs.length === 0 ? 0 : y + height, items }
}

/** A sign in miniature, `height` high, drawn by the same code as in the strip. */
function legendSign(
  sign: LegendSign,
  height: number,
  fonts: FontSet,
): { readonly width: number; readonly at: (x: number, y: number) => readonly DrawnItem[] } {
  const base = stripStyle()
  const scale = height / base.blockHeight
  const style: StripStyle = { ...base, cell: base.cell * scale * 1.1, hair: base.hair, floor: 0, blockHeight: height }
  const half = blockHalf(style.cell, style)
  const middle = (x: number): number => x + half
  const block =
    (state: CellState, soft = false) =>
    (x: number, y: number) =>
      drawBlock(sample(state, soft), { x: middle(x), cell: style.cell, top: y, floor: y + height }, style, fonts)
  switch (sign) {
    case 'swing':
      return {
        width: height * 0.62,
        at: (x, y) => drawSwing({ direction: 'down', weight: 'thin' }, x + height * 0.31, y, height * 1.05),
      }
    case 'ring':
      return { width: half * 2.4, at: (x, y) => [drawRing(x, x + half * 2.4, { top: y, floor: y + height })] }
    case 'short':
      return { width: half, at: block('short') }
    case 'softer':
      return { width: half * 2, at: block('struck', true) }
    case 'unstruck':
      return { width: half * 2.2, at: (x, y) => block('unstruck')(x + half * 0.2, y) }
    default:
      return { width: half * 2, at: block(sign) }
  }
}

/** A cell that stands for nothing but its state. */
function sample(state: CellState, soft: boolean): StripCell {
  return {
    at: 0,
    ticks: TICKS_PER_QUARTER,
    state,
    event: {
      kind: 'scratch',
      at: 0,
      duration: TICKS_PER_QUARTER,
      span: { start: 0, end: 0 },
      stroke: 'down',
      strokeGiven: false,
      strings: null,
      shownOn: [],
      marks: soft ? ['ghost'] : [],
      palmMuted: false,
    },
    eventAt: 0,
    sounds: true,
    word: '',
    swing: null,
  }
}
