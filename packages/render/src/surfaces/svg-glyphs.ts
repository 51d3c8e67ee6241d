import { assertNever } from '@barwise/parser'
import { CLOSE, CURVE, type Drawing, type DrawnItem, type GlyphRun, LINE, MOVE } from '../drawing/drawing.ts'
import type { FaceId } from '../fonts/face.ts'
import type { FontSet } from '../fonts/font-set.ts'

/** Def outlines are written in thousandths of the em, so that they need no decimals. */
export const UNITS_PER_EM = 1000

/** Faces whose signs are always drawn as outlines, since no page embeds them; all others hold words. */
const SIGN_FACES: ReadonlySet<FaceId> = new Set(['music', 'music-text', 'symbols'])

/** Whether a run is written as outlines: signs always are, words when `outlined`. */
export function isOutlined(run: GlyphRun, outlined: boolean): boolean {
  return outlined || SIGN_FACES.has(run.face)
}

/** One glyph to be drawn: the id of its definition and its place in ems from the start of the run. */
export interface GlyphUse {
  readonly id: string
  readonly x: number
  readonly y: number
}

/** The glyphs of a run that have ink, with the ids of their definitions, such as `g-music-e0a4` or `g-sans-17`. */
export function glyphUses(run: GlyphRun, fonts: FontSet): readonly (GlyphUse & { readonly glyph: number })[] {
  const sign = SIGN_FACES.has(run.face)
  return fonts
    .layOut(run.face, run.text)
    .filter(({ glyph }) => fonts.glyphOutline(run.face, glyph).length > 0)
    .map(({ glyph, x, y, codePoints }) => {
      // Signs are known by their character, so that an id means the same in every edition of the font; letters may be joined.
      const name = sign ? (codePoints[0] ?? 0).toString(16) : String(glyph)
      return { id: `g-${run.face}-${name}`, x, y, glyph }
    })
}

/** The `<path>` definitions of every outlined glyph of the drawings, each once, sorted by id. */
export function glyphDefinitions(
  drawings: readonly Drawing[],
  fonts: FontSet,
  options: { readonly outlined: boolean },
): string {
  const definitions = new Map<string, string>()
  const visit = (items: readonly DrawnItem[]): void => {
    for (const item of items) {
      if (item.kind === 'group') visit(item.items)
      if (item.kind !== 'glyphs' || !isOutlined(item, options.outlined)) continue
      for (const { id, glyph } of glyphUses(item, fonts)) {
        if (definitions.has(id)) continue
        const data = fonts.glyphOutline(item.face, glyph)
        definitions.set(id, `<path id="${id}" d="${pathAttribute(data, UNITS_PER_EM, 0)}"/>`)
      }
    }
  }
  for (const drawing of drawings) visit(drawing.items)
  return [...definitions.keys()]
    .sort()
    .map((id) => definitions.get(id))
    .join('')
}

/** Path data as the `d` of an SVG path, multiplied by `factor` and rounded to `decimals`. */
export function pathAttribute(data: readonly number[], factor: number, decimals: number): string {
  let d = ''
  let i = 0
  const pairs = (count: number): string => {
    const numbers: string[] = []
    for (let k = 1; k <= count * 2; k += 1) numbers.push(roundTo((data[i + k] ?? 0) * factor, decimals))
    return numbers.join(' ')
  }
  while (i < data.length) {
    const command = data[i]
    switch (command) {
      case MOVE:
        d += `M${pairs(1)}`
        i += 3
        break
      case LINE:
        d += `L${pairs(1)}`
        i += 3
        break
      case CURVE:
        d += `C${pairs(3)}`
        i += 7
        break
      case CLOSE:
        d += 'Z'
        i += 1
        break
      default:
        return assertNever(command as never)
    }
  }
  return d
}

/** A number rounded for output, never `-0` and without needless digits, as in `roundTo(2.50001, 2)` = `2.5`. */
export function roundTo(value: number, decimals: number): string {
  const factor = 10 ** decimals
  const rounded = Math.round(value * factor) / factor
  return String(rounded === 0 ? 0 : rounded)
}
