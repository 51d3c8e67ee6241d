import { assertNever } from '@barwise/parser'
import {
  CLOSE,
  CURVE,
  type Drawing,
  type DrawnItem,
  type GlyphRun,
  type Ink,
  MOVE,
  type Path,
} from '../../drawing/drawing.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import type { Fragment } from '../../page/layout/page-content.ts'
import type { PdfDocument } from './pdf-document.ts'

/** What operators are written with. `mono` prints everything that is not white in black. */
export interface Pen {
  readonly pdf: PdfDocument
  readonly fonts: FontSet
  readonly mono: boolean
}

/** A number as content streams take it: at most three decimals, no minus zero. */
export function number(value: number): string {
  const rounded = Math.round(value * 1000) / 1000
  return Object.is(rounded, -0) ? '0' : String(rounded)
}

/** Black is gray 0, so that no printer mixes it from colours. The accent is #0B5A66. */
function colour(ink: Ink, mono: boolean): readonly [fill: string, stroke: string] {
  switch (ink) {
    case 'paper':
      return ['1 g', '1 G']
    case 'quiet':
      return mono ? ['0 g', '0 G'] : ['0.35 g', '0.35 G']
    case 'accent':
      return mono ? ['0 g', '0 G'] : ['0.043 0.353 0.4 rg', '0.043 0.353 0.4 RG']
    case 'ink':
      return ['0 g', '0 G']
    default:
      return assertNever(ink)
  }
}

/** A drawing at a place as one string of operators. */
export function drawingOperators(drawing: Drawing, at: { readonly x: number; readonly y: number }, pen: Pen): string {
  const out: string[] = [`q 1 0 0 1 ${number(at.x)} ${number(at.y)} cm`]
  for (const item of drawing.items) putItem(item, pen, out)
  out.push('Q')
  return out.join('\n')
}

function putItem(item: DrawnItem, pen: Pen, out: string[]): void {
  switch (item.kind) {
    case 'group':
      for (const inner of item.items) putItem(inner, pen, out)
      return
    case 'path':
      out.push(pathOperators(item, pen))
      return
    case 'glyphs':
      out.push(runOperators(item, pen))
      return
    default:
      assertNever(item)
  }
}

function pathOperators(path: Path, pen: Pen): string {
  const [fill, stroke] = colour(path.ink, pen.mono)
  const data = pathData(path.data)
  if (path.paint === 'fill') return `${fill} ${data} f`
  const dash = path.dash.length === 0 ? '' : `[${path.dash.map(number).join(' ')}] 0 d `
  const end = path.dash.length === 0 ? '' : ' [] 0 d'
  return `${stroke} ${number(path.lineWidth)} w ${dash}${data} S${end}`
}

function pathData(data: readonly number[]): string {
  const out: string[] = []
  let i = 0
  while (i < data.length) {
    const command = data[i] ?? CLOSE
    const count = command === CLOSE ? 0 : command === CURVE ? 6 : 2
    for (let k = 1; k <= count; k += 1) out.push(number(data[i + k] ?? 0))
    out.push(command === MOVE ? 'm' : command === CLOSE ? 'h' : command === CURVE ? 'c' : 'l')
    i += 1 + count
  }
  return out.join(' ')
}

function runOperators(run: GlyphRun, pen: Pen): string {
  const [fill] = colour(run.ink, pen.mono)
  const shown = show({ face: run.face, size: run.size, text: run.text }, pen, 'nothing')
  return shown === '' ? '' : `BT ${fill} ${place(run.x, run.y)} ${shown} ET`
}

function place(x: number, y: number): string {
  return `1 0 0 -1 ${number(x)} ${number(y)} Tm`
}

/** Fragments of a line on its base line. The last takes the space or the hyphen that joins the line to the next. */
export function lineOperators(
  fragments: readonly Fragment[],
  at: { readonly x: number; readonly y: number; readonly ends: 'space' | 'hyphen' | 'nothing' },
  pen: Pen,
): string {
  const parts = fragments.map((fragment, index) => {
    const [fill] = colour(fragment.ink, pen.mono)
    const ends = index === fragments.length - 1 ? at.ends : 'nothing'
    return `${fill} ${place(at.x + fragment.dx, at.y - fragment.rise)} ${show(fragment, pen, ends)}`
  })
  return `BT ${parts.join(' ')} ET`
}

/** The operator that shows a text, its glyphs moved where layout kerned them. */
function show(
  run: { readonly face: Fragment['face']; readonly size: number; readonly text: string },
  { pdf, fonts }: Pen,
  ends: 'space' | 'hyphen' | 'nothing',
): string {
  const words = ends === 'hyphen' && run.text.endsWith('-') ? run.text.slice(0, -1) : run.text
  const text = ends === 'space' && fonts.has(run.face, 0x20) ? `${words} ` : words
  const placed = fonts.layOut(run.face, text)
  const codes = pdf.encode(run.face, placed)
  const out: string[] = []
  let codesInRow = ''
  let x = 0
  codes.forEach(({ code, advance }, index) => {
    const wanted = placed[index]?.x ?? x
    if (Math.abs(wanted - x) > 0.0005) {
      if (codesInRow !== '') out.push(`<${codesInRow}>`)
      out.push(number((x - wanted) * 1000))
      codesInRow = ''
      x = wanted
    }
    codesInRow += code
    x += advance
  })
  if (ends === 'hyphen' && words !== run.text) codesInRow += pdf.encodeSoftHyphen(run.face).code
  if (codesInRow !== '') out.push(`<${codesInRow}>`)
  if (out.length === 0) return ''
  return `/${pdf.fontName(run.face)} ${number(run.size)} Tf [${out.join(' ')}] TJ`
}
