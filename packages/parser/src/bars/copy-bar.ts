import type { Shape } from '../score/shape.ts'
import { helpForShape } from '../shapes/unknown-shape.ts'
import type { Span } from '../source/span.ts'
import type { BarHeader } from './bar-header.ts'
import { type BarContext, spanFrom } from './context.ts'
import type { BarDraft, PlacedSign, Segment, WrittenChord } from './draft.ts'
import { retarget } from './shape-target.ts'
import type { StrokeSign } from './stroke-sign.ts'

/** Which shape is read in place of which, by the name of the one that goes. */
export type Swaps = ReadonlyMap<string, { readonly from: Shape; readonly to: Shape }>

/** The shapes that `with` names; names that are none are reported and left out. */
export function readSwapShapes(header: BarHeader, offset: number, context: BarContext): Swaps {
  const swaps = new Map<string, { from: Shape; to: Shape }>()
  for (const { to, from } of header.swaps) {
    const [toShape, fromShape] = [to, from].map((word) => {
      const shape = context.shapes.get(word.text)
      if (shape === undefined) {
        const help = helpForShape(word.text, [...context.shapes.keys()])
        const span = spanFrom(offset, word.start, word.end)
        context.report({ code: 'unknown-shape', span, message: `there is no shape "${word.text}"`, help })
      }
      return shape
    })
    if (toShape !== undefined && fromShape !== undefined && !swaps.has(from.text)) {
      swaps.set(from.text, { from: fromShape, to: toShape })
    }
  }
  return swaps
}

/** Copies the signs and chords of bars as if they had been typed again; one copier serves one line. */
export interface BarCopier {
  copy(source: BarDraft): { readonly segments: readonly Segment[]; readonly chords: readonly WrittenChord[] | null }
}

/** A copier for one line; what a swap cannot play is reported there, once for each sign. */
export function createBarCopier(line: Span, swaps: Swaps, context: BarContext): BarCopier {
  const swapped = new Map<string, StrokeSign>()
  const swapSign = (sign: StrokeSign): StrokeSign => {
    if (sign.meaning.kind !== 'notes' || sign.meaning.target.shape === null) return sign
    const swap = swaps.get(sign.meaning.target.shape)
    if (swap === undefined) return sign
    const known = swapped.get(sign.text)
    if (known !== undefined) return known
    const read = readOn(sign, swap.to, { line, context })
    swapped.set(sign.text, read)
    return read
  }
  const copySign = (placed: PlacedSign): PlacedSign => ({
    ...placed,
    sign: swaps.size === 0 ? placed.sign : swapSign(placed.sign),
    copy: line,
    origin: placed,
  })
  return {
    copy: (source) => ({
      segments: source.segments.map((segment) => ({ ...segment, signs: segment.signs.map(copySign) })),
      chords: source.chords?.map((chord) => ({ ...chord, symbol: swapSymbol(chord.symbol, swaps) })) ?? null,
    }),
  }
}

/** The sign on another shape: its text too, so that a copy of the copy reads on from there. */
function readOn(
  sign: StrokeSign,
  to: Shape,
  { line, context }: { readonly line: Span; readonly context: BarContext },
): StrokeSign {
  if (sign.meaning.kind !== 'notes') return sign
  if (context.brokenShapes.has(to.name)) return { ...sign, meaning: { kind: 'lost' } }
  const { target } = sign.meaning
  const actions = /^[a-z]+:/.exec(sign.text)?.[0] ?? ''
  const body = sign.text.slice(actions.length).replace(/[><'_~]+$/, '')
  const marks = sign.text.slice(actions.length + body.length)
  const pieces = body.slice((target.shape ?? '').length)
  const read = retarget(to, pieces, { span: line, context })
  const text = actions + to.name + pieces + marks
  if (read === null) return { text, span: sign.span, meaning: { kind: 'lost' } }
  return { text, span: sign.span, meaning: { ...sign.meaning, target: read.target, notes: read.notes } }
}

function swapSymbol(symbol: string | null, swaps: Swaps): string | null {
  if (symbol === null) return null
  for (const { from, to } of swaps.values()) {
    if (symbol === (from.label ?? from.name)) return to.label ?? to.name
  }
  return symbol
}
