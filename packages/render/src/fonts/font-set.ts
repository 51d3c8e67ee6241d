import { create, type Font, type Glyph } from 'fontkit'
import { FACE_IDS, type FaceId, type FontBytes } from './face.ts'
import { glyphPath } from './glyph-path.ts'
import { type Itemised, itemiseText } from './itemise.ts'

/** The ink of a run set on its base line at the origin: points, y downward. All of it is 0 where nothing is inked; `width` is the advance. */
export interface TextMeasure {
  readonly width: number
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** One glyph of a laid out run: its number in the font and its place on the base line, in ems. */
export interface PlacedGlyph {
  readonly glyph: number
  readonly x: number
  readonly y: number
  /** The characters it stands for; more than one in a ligature. */
  readonly codePoints: readonly number[]
}

/** Heights of a face above its base line in ems; `descent` is below it and positive. */
export interface FaceHeights {
  readonly ascent: number
  readonly descent: number
  readonly capHeight: number
  readonly xHeight: number
}

/**
 * The faces of a page, opened and ready to be measured.
 *
 * This module is the one door to fontkit. Its quirks, each held by a test:
 * 1. `create` is typed for Node's Buffer; any Uint8Array works.
 * 2. A glyph without ink has a box of plus and minus infinity.
 * 3. A missing character gives glyph 0 (.notdef) without a word: `has` is asked first, and a missing one measures nothing.
 * 4. Outlines are in font units with y upward, quadratic in TrueType faces: ours are in ems, y downward, cubic.
 * 5. `layout` kerns and joins letters (`fi`); the music faces are set glyph by glyph, so that no rule of theirs moves a sign.
 * 6. `layout` and `path` are slow, so every answer is kept.
 * 7. A glyph keeps the characters it was first made with: none when it was asked for by number or as a part of another (the `a` of an
 *    `ä` that came first), a no-break space where that came before the first space. Both are mended here.
 */
export interface FontSet {
  /** The advance and ink box of a text in one face, kerned when it is a text face. Characters the face lacks take no room. */
  measure(face: FaceId, size: number, text: string): TextMeasure
  has(face: FaceId, codePoint: number): boolean
  /** The outline of a character as path data (see `Path.data`) in ems, y downward; empty when it has no ink or the face lacks it. */
  outline(face: FaceId, codePoint: number): readonly number[]
  /** The glyphs of a run and their places, kerned and joined as `measure` assumes. */
  layOut(face: FaceId, text: string): readonly PlacedGlyph[]
  /** The outline of a glyph by its number, as `outline`. */
  glyphOutline(face: FaceId, glyph: number): readonly number[]
  heights(face: FaceId): FaceHeights
  /** The text cut into runs, each in the first face of the fallback chain that holds its characters, and what no face holds. */
  itemise(face: FaceId, text: string): Itemised
  /** The opened font, shared; its own methods carry the quirks above. */
  font(face: FaceId): Font
}

const MUSIC_FACES: ReadonlySet<FaceId> = new Set(['music', 'music-text'])

interface OpenFace {
  readonly font: Font
  readonly layouts: Map<string, readonly PlacedGlyph[]>
  readonly measures: Map<string, TextMeasure>
  readonly outlines: Map<number, readonly number[]>
  readonly characters: ReadonlySet<number>
}

/** Opens every face. Throws when bytes are no single TrueType or OpenType font (our bug: they are bundled). */
export function openFonts(bytes: FontBytes): FontSet {
  const faces = new Map<FaceId, OpenFace>()
  for (const id of FACE_IDS) faces.set(id, openFace(bytes[id]))

  const open = (face: FaceId): OpenFace => {
    const found = faces.get(face)
    if (found === undefined) throw new Error(`no such face: ${face}`)
    return found
  }
  const has = (face: FaceId, codePoint: number): boolean => open(face).characters.has(codePoint)

  return {
    has,
    font: (face) => open(face).font,
    layOut: (face, text) => layOutRun(open(face), face, text),
    measure: (face, size, text) => scaleMeasure(measureRun(open(face), face, text), size),
    outline: (face, codePoint) => {
      if (!has(face, codePoint)) return []
      return outlineOf(open(face), open(face).font.glyphForCodePoint(codePoint).id)
    },
    glyphOutline: (face, glyph) => outlineOf(open(face), glyph),
    heights: (face) => {
      const { font } = open(face)
      const em = font.unitsPerEm
      return {
        ascent: font.ascent / em,
        descent: -font.descent / em,
        capHeight: font.capHeight / em,
        xHeight: font.xHeight / em,
      }
    },
    itemise: (face, text) =>
      itemiseText(face, text, { has, capHeight: (f) => open(f).font.capHeight / open(f).font.unitsPerEm }),
  }
}

function openFace(bytes: Uint8Array): OpenFace {
  const font = create(bytes as Parameters<typeof create>[0])
  if (!('unitsPerEm' in font)) throw new Error('a face is a collection of fonts, not one font')
  return { font, layouts: new Map(), measures: new Map(), outlines: new Map(), characters: new Set(font.characterSet) }
}

function layOutRun(open: OpenFace, face: FaceId, text: string): readonly PlacedGlyph[] {
  const kept = open.layouts.get(text)
  if (kept !== undefined) return kept
  const { font, characters } = open
  const em = font.unitsPerEm
  const known = [...text].filter((character) => characters.has(character.codePointAt(0) ?? 0)).join('')
  const placed: PlacedGlyph[] = []
  let x = 0
  if (MUSIC_FACES.has(face)) {
    for (const character of known) {
      const codePoint = character.codePointAt(0) ?? 0
      const glyph = font.glyphForCodePoint(codePoint)
      placed.push({ glyph: glyph.id, x: x / em, y: 0, codePoints: [codePoint] })
      x += glyph.advanceWidth
    }
  } else if (known !== '') {
    const run = font.layout(known)
    run.glyphs.forEach((glyph, index) => {
      const position = run.positions[index]
      if (position === undefined) return
      placed.push({
        glyph: glyph.id,
        x: (x + position.xOffset) / em,
        y: -position.yOffset / em,
        codePoints: charactersOf(font, glyph),
      })
      x += position.xAdvance
    })
  }
  // The advance of the whole run is kept with the measure; a run is always laid out before it is measured.
  open.measures.set(text, measurePlaced(open, placed, x / em))
  open.layouts.set(text, placed)
  return placed
}

/** The characters a glyph of a run stands for; a space of either kind is a space. */
function charactersOf(font: Font, glyph: Glyph): readonly number[] {
  const { codePoints, id } = glyph
  const known = codePoints.length > 0 ? codePoints : [...(font.stringsForGlyph(id)[0] ?? '')].map(codePointOf)
  return known.map((codePoint) => (codePoint === NO_BREAK_SPACE ? SPACE : codePoint))
}

const SPACE = 0x20
const NO_BREAK_SPACE = 0xa0

function codePointOf(character: string): number {
  return character.codePointAt(0) ?? 0
}

function measureRun(open: OpenFace, face: FaceId, text: string): TextMeasure {
  const kept = open.measures.get(text)
  if (kept !== undefined) return kept
  layOutRun(open, face, text)
  return measureRun(open, face, text)
}

function measurePlaced(open: OpenFace, placed: readonly PlacedGlyph[], width: number): TextMeasure {
  const em = open.font.unitsPerEm
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { glyph, x, y } of placed) {
    const box = open.font.getGlyph(glyph).bbox
    if (!Number.isFinite(box.minX)) continue
    left = Math.min(left, x + box.minX / em)
    right = Math.max(right, x + box.maxX / em)
    top = Math.min(top, y - box.maxY / em)
    bottom = Math.max(bottom, y - box.minY / em)
  }
  return left === Infinity ? { width, left: 0, top: 0, right: 0, bottom: 0 } : { width, left, top, right, bottom }
}

function scaleMeasure(measure: TextMeasure, size: number): TextMeasure {
  return {
    width: measure.width * size,
    left: measure.left * size,
    top: measure.top * size,
    right: measure.right * size,
    bottom: measure.bottom * size,
  }
}

function outlineOf(open: OpenFace, glyph: number): readonly number[] {
  const kept = open.outlines.get(glyph)
  if (kept !== undefined) return kept
  const outline = glyphPath(open.font.getGlyph(glyph).path.commands, open.font.unitsPerEm)
  open.outlines.set(glyph, outline)
  return outline
}
