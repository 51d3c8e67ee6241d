import type { Instrument, Shape } from '@barwise/parser'
import type { Bounds } from '../drawing/bounds.ts'
import type { Drawing, DrawnItem } from '../drawing/drawing.ts'
import { pointsOf } from '../drawing/lengths.ts'
import { translate } from '../drawing/place.ts'
import { setText } from '../drawing/set-text.ts'
import { circle, cross, line, rect, roundRect } from '../drawing/shapes.ts'
import type { FontSet } from '../fonts/font-set.ts'
import { type GridMeasures, gridMeasures } from './grid-measures.ts'
import { gridTitle } from './grid-title.ts'
import { barresOf, type GridWindow, gridWindow } from './grid-window.ts'
import { noteName } from './note-name.ts'

export interface DrawGridInput {
  readonly shape: Shape
  readonly instrument: Instrument
  readonly fonts: FontSet
  /** 1 is 19 mm across six strings; large print takes 1.75, which makes the smallest text 14 pt. */
  readonly scale?: number
  /** How many frets are drawn at least; the grids of a row are drawn with those of the longest, so that all are of one size. */
  readonly fretCount?: number
  /** String 1 at the left, for a left-handed player. */
  readonly mirrored?: boolean
  /** What stands under each string: the written note that sounds, the open string's name, or nothing. */
  readonly below?: 'notes' | 'strings' | 'none'
  /** How the language calls the note B natural; `B` when left out. */
  readonly bNatural?: 'B' | 'H'
  /** The word before the symbol that a shape implies, in the lesson's language. Null or left out leaves the line to the page. */
  readonly impliesWord?: string | null
  /** Whether the line of what is implied is given room although this shape has none, for grids in a row. */
  readonly impliesRoom?: boolean
}

/** A grid as a drawing, and the box of its strings and frets in it, to hang words under. Points. */
export interface DrawnGrid {
  readonly drawing: Drawing
  readonly field: Bounds
  readonly window: GridWindow
}

/**
 * Draws a shape as a chord grid: name above, open and damped strings marked over the top line, fingers in dots, each barre as one bar, the
 * first fret at the side when the grid does not hang from the nut, note names below. All grids with the same strings, frets and options are of one size.
 */
export function drawGrid(input: DrawGridInput): DrawnGrid {
  const { shape, instrument, fonts } = input
  const own = gridWindow(shape.frets)
  const window = { ...own, fretCount: Math.max(own.fretCount, input.fretCount ?? 0) }
  const strings = shape.frets.length
  const m = gridMeasures(strings, window.fretCount, input.scale ?? 1)
  const place: Place = {
    x: (string) => ((input.mirrored ?? false) ? string - 1 : strings - string) * m.stringGap,
    y: (fret) => (fret - window.firstFret + 0.5) * m.fretGap,
    m,
    fonts,
  }
  const title = gridTitle(shape, m.titleSize, fonts)
  const field = { left: m.left, top: m.top, right: m.left + m.fieldWidth, bottom: m.top + m.fieldHeight }
  const below = belowItems(input, place, m)
  const implies = shape.implied && shape.label !== null ? impliesLine(input, shape.label, m) : []
  const belowHeight = (input.below ?? 'notes') === 'none' ? 0 : m.noteDrop
  const impliesHeight = implies.length > 0 || (input.impliesRoom ?? false) ? m.impliesLeading : 0
  const items = [
    ...translate(title.items, titleLeft(title.width, m), m.titleBase),
    ...translate([...lines(shape, instrument, window, place), ...signs(shape, place)], m.left, m.top),
    ...translate(dots(shape, place), m.left, m.top),
    ...fretNumber(window, m, fonts),
    ...translate(below, m.left, m.top + m.fieldHeight),
    ...translate(implies, 0, field.bottom + belowHeight),
  ]
  const width = Math.max(m.left + m.fieldWidth + m.right, title.width)
  const height = field.bottom + belowHeight + impliesHeight + m.foot
  return { drawing: { kind: 'drawing', width, height, items }, field, window }
}

/** The grids of a row, drawn alike: as many frets as the longest needs, the same height, names and lines on common base lines. */
export function drawGridRow(
  shapes: readonly Shape[],
  input: Omit<DrawGridInput, 'shape' | 'fretCount' | 'impliesRoom'>,
): readonly DrawnGrid[] {
  const fretCount = Math.max(0, ...shapes.map((shape) => gridWindow(shape.frets).fretCount))
  const impliesRoom = (input.impliesWord ?? null) !== null && shapes.some((shape) => shape.implied)
  const grids = shapes.map((shape) => drawGrid({ ...input, shape, fretCount, impliesRoom }))
  const width = Math.max(0, ...grids.map(({ drawing }) => drawing.width))
  return grids.map((grid) => ({ ...grid, drawing: { ...grid.drawing, width } }))
}

/** Where strings and frets stand, from the top of the string at the left. */
interface Place {
  readonly x: (string: number) => number
  readonly y: (fret: number) => number
  readonly m: GridMeasures
  readonly fonts: FontSet
}

/** A name starts over the first string, or further left when it would run out at the right. */
function titleLeft(width: number, m: GridMeasures): number {
  return Math.max(0, Math.min(m.left - m.hair, m.left + m.fieldWidth + m.right - width))
}

/** Strings from thick to thin (all alike on an instrument with strings of one kind), frets, and the nut or the top line. */
function lines(shape: Shape, instrument: Instrument, window: GridWindow, { x, m }: Place): DrawnItem[] {
  const items: DrawnItem[] = []
  const strings = shape.frets.length
  const thickest = m.stringWidths.thick
  const outer = instrument.name === 'ukulele' ? m.stringWidths.thin : thickest
  for (let fret = 1; fret <= window.fretCount; fret += 1) {
    const y = fret * m.fretGap
    items.push(line('grid-line', { x1: 0, y1: y, x2: m.fieldWidth, y2: y }, m.fretWidth))
  }
  for (let string = strings; string >= 1; string -= 1) {
    const share = strings === 1 ? 0 : (string - 1) / (strings - 1)
    const width = m.stringWidths.thin + share * (outer - m.stringWidths.thin)
    items.push(line('grid-line', { x1: x(string), y1: 0, x2: x(string), y2: m.fieldHeight + m.fretWidth / 2 }, width))
  }
  // The top line covers the ends of the outer strings, so that corners are square.
  const top = window.atNut ? m.nutWidth : m.topWidth
  const over = thickest / 2
  const box = { x: -over, y: -top + m.fretWidth / 2, width: m.fieldWidth + 2 * over, height: top }
  items.push(rect(window.atNut ? 'grid-nut' : 'grid-line', box))
  return items
}

function signs(shape: Shape, { x, m }: Place): DrawnItem[] {
  return shape.frets.flatMap((fret, index): DrawnItem[] => {
    const centre = { x: x(index + 1), y: -m.signRise }
    if (fret === null) {
      const arm = m.signRadius * 0.92
      return [cross('grid-sign', { ...centre, armX: arm, armY: arm }, m.signWidth * 1.15)]
    }
    return fret === 0 ? [circle('grid-sign', { ...centre, radius: m.signRadius - m.signWidth / 2 }, m.signWidth)] : []
  })
}

function dots(shape: Shape, { x, y, m, fonts }: Place): DrawnItem[] {
  const bars = barresOf(shape).map(({ fret, lowestString, highestString }) => {
    const [a, b] = [x(lowestString), x(highestString)]
    const left = Math.min(a, b) - m.dotRadius
    const box = { x: left, y: y(fret) - m.dotRadius, width: Math.abs(a - b) + 2 * m.dotRadius, height: 2 * m.dotRadius }
    return roundRect('grid-barre', box, m.dotRadius)
  })
  const pressed = shape.frets.flatMap((fret, index): DrawnItem[] => {
    if (fret === null || fret === 0) return []
    const centre = { x: x(index + 1), y: y(fret) }
    const finger = shape.fingers[index] ?? null
    const dot = circle('grid-dot', { ...centre, radius: m.dotRadius }, 0)
    return finger === null ? [dot] : [dot, figure(String(finger), centre, m, fonts)]
  })
  return [...bars, ...pressed]
}

/** A figure with the middle of its ink on a point. */
function figure(text: string, centre: { x: number; y: number }, m: GridMeasures, fonts: FontSet): DrawnItem {
  const ink = fonts.measure('sans-bold', m.fingerSize, text)
  const x = centre.x - (ink.left + ink.right) / 2
  const y = centre.y - (ink.top + ink.bottom) / 2
  return { kind: 'glyphs', role: 'grid-figure', face: 'sans-bold', size: m.fingerSize, text, x, y, ink: 'paper' }
}

function fretNumber(window: GridWindow, m: GridMeasures, fonts: FontSet): readonly DrawnItem[] {
  if (window.atNut) return []
  const middle = m.top + m.fretGap / 2
  const text = String(window.firstFret)
  const ink = fonts.measure('sans-semibold', m.fretSize, text)
  const at = { x: m.left - m.dotRadius - m.fretNumberGap, y: middle - (ink.top + ink.bottom) / 2 }
  const setting = { role: 'grid-label', face: 'sans-semibold', size: m.fretSize, align: 'right' } as const
  return setText(text, at, setting, fonts).runs
}

function belowItems(
  { shape, instrument, below = 'notes', bNatural = 'B' }: DrawGridInput,
  { x, fonts }: Place,
  m: GridMeasures,
): DrawnItem[] {
  if (below === 'none') return []
  return shape.frets.flatMap((_, index) => {
    const name = below === 'notes' ? shape.written[index] : instrument.stringNames[index]
    if (typeof name !== 'string') return []
    return noteName(name, { x: x(index + 1), y: m.noteBase }, m.noteSize, { fonts, bNatural })
  })
}

function impliesLine(input: DrawGridInput, label: string, m: GridMeasures): readonly DrawnItem[] {
  const word = input.impliesWord ?? null
  if (word === null) return []
  const pretty = label.replace(/(?<=^[A-G]|\/[A-G])#|#(?=\d)/g, '♯').replace(/(?<=^[A-G]|\/[A-G])b|b(?=\d)/g, '♭')
  const setting = { role: 'text', face: 'sans-italic', size: m.impliesSize } as const
  return setText(`${word} ${pretty}`, { x: m.left - pointsOf(0.2), y: m.impliesSize * 1.1 }, setting, input.fonts).runs
}
