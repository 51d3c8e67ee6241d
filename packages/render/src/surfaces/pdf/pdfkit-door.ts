import PDFDocument from 'pdfkit'
import { FACE_IDS, type FaceId } from '../../fonts/face.ts'
import type { PlacedGlyph } from '../../fonts/font-set.ts'
import type { EncodedGlyph, PdfDocument, PdfElement, PdfSettings } from './pdf-document.ts'
import { countClosed, escapeMetadata, type Inside, type InsideFont, type InsideOutline } from './pdfkit-inside.ts'

/** Signs of the music face that stand for characters of Unicode, so that copied text says what it shows. Source: SMuFL 1.4 and Unicode 15. */
const MUSIC_IN_WORDS: ReadonlyMap<number, readonly number[]> = new Map([
  [0xeca2, [0x1d15d]],
  [0xeca3, [0x1d15e]],
  [0xeca5, [0x2669]],
  [0xeca7, [0x266a]],
  [0xeca9, [0x1d161]],
  [0xecab, [0x1d162]],
  [0xecb7, [0x2e]],
  [0xed60, [0x266d]],
  [0xed61, [0x266e]],
  [0xed62, [0x266f]],
  [0xed63, [0x1d12a]],
  [0xed64, [0x1d12b]],
])

/**
 * Opens a tagged document on pdfkit 0.20.2. This module is its one door. Its quirks, each held by a test:
 * 1. The built-in fonts are never embedded, and Helvetica is loaded unasked: `font: null`, no first page.
 * 2. Text is laid out anew by words, without spaces when justified: glyphs are placed by our own layout and written as operators.
 * 3. Title and author go into the XMP metadata unescaped: `_addInfo` runs on an escaped copy.
 * 4. A link's place in the structure belongs to the page that is current when its element ends: it is ended at once.
 * 5. Links have empty descriptions and outline entries lean on the page's right edge: both are given explicitly.
 * 6. Outline counts are missing at the root and on closed entries: set by hand.
 * 7. There is no API for page labels, and a missing character is written as glyph 0 without a word (never asked for here).
 * 8. An element that is never attached keeps the stream open for ever: elements are attached when made.
 * 9. The characters of a glyph are those of its first use, so a hyphen at a line's end would stay in copied words: it gets a glyph of its own.
 */
export function openPdf(settings: PdfSettings): PdfDocument {
  const { fonts } = settings
  const doc = new PDFDocument({
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    tagged: true,
    subset: 'PDF/UA',
    pdfVersion: '1.7',
    lang: settings.language,
    displayTitle: true,
    compress: settings.compress,
    info: {
      Title: settings.title,
      ...(settings.author === null ? {} : { Author: settings.author }),
      Creator: 'Barwise',
      Producer: 'Barwise',
      CreationDate: settings.creationDate,
    },
    font: null,
  } as unknown as PDFKit.PDFDocumentOptions)
  const inside = doc as unknown as Inside
  escapeMetadata(inside)
  const chunks: Uint8Array[] = []
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
  const ended = new Promise<void>((resolve, reject) => {
    doc.on('end', resolve)
    doc.on('error', reject)
  })
  const faces = new Map<FaceId, InsideFont>()
  for (const face of FACE_IDS) {
    doc.registerFont(face, fonts.font(face) as unknown as PDFKit.Mixins.PDFFontSource)
    doc.font(face)
    faces.set(face, inside._font)
  }
  const softHyphens = new Map<FaceId, EncodedGlyph>()
  const outlineStack: InsideOutline[] = [inside.outline]
  inside.outline.options = { ...inside.outline.options, expanded: true }
  const roots: PdfElement[] = []

  const faceOf = (face: FaceId): InsideFont => {
    const found = faces.get(face)
    if (found === undefined) throw new Error(`no such face: ${face}`)
    return found
  }
  const encodeOne = (face: FaceId, placed: PlacedGlyph): EncodedGlyph => {
    const font = faceOf(face)
    const glyph = fonts.font(face).getGlyph(placed.glyph)
    const code = font.subset.includeGlyph(placed.glyph)
    const advance = glyph.advanceWidth / fonts.font(face).unitsPerEm
    font.widths[code] ??= advance * 1000
    font.unicode[code] ??= MUSIC_IN_WORDS.get(placed.codePoints[0] ?? 0) ?? placed.codePoints
    return { code: hex(code), advance }
  }
  const encodeSoftHyphen = (face: FaceId): EncodedGlyph => {
    const kept = softHyphens.get(face)
    if (kept !== undefined) return kept
    const font = faceOf(face)
    const glyph = fonts.font(face).glyphForCodePoint(0x2d)
    const advance = glyph.advanceWidth / fonts.font(face).unitsPerEm
    font.subset.glyphs.push(glyph.id)
    const code = font.subset.glyphs.length - 1
    font.widths[code] = advance * 1000
    font.unicode[code] = [0xad]
    const made = { code: hex(code), advance }
    softHyphens.set(face, made)
    return made
  }

  return {
    addPage: (width, height) => {
      doc.addPage({ size: [width, height], margin: 0 })
    },
    write: (operators) => inside.addContent(operators),
    fontName: (face) => {
      const font = faceOf(face)
      inside.page.fonts[font.id] ??= font.ref()
      return font.id
    },
    encode: (face, glyphs) => glyphs.map((placed) => encodeOne(face, placed)),
    encodeSoftHyphen,
    element: (role, parent, given = {}) => {
      const made = inside.struct(role, given)
      if (parent === null) {
        inside.addStructure(made)
        roots.push(made)
      } else parent.add(made)
      return made
    },
    mark: (element, role, draw) => {
      const content = inside.markStructureContent(role)
      draw()
      inside.endMarkedContent()
      element.add(content)
    },
    artifact: (kind, draw) => {
      inside.markContent('Artifact', { type: kind })
      draw()
      inside.endMarkedContent()
    },
    linkTo: (box, target, label, element) => {
      const given = { structParent: element, Contents: new String(label) }
      if ('name' in target) inside.goTo(box.x, box.y, box.width, box.height, target.name, given)
      else inside.link(box.x, box.y, box.width, box.height, target.url, given)
      element.end()
    },
    anchor: (name, y) => inside.addNamedDestination(name, 'XYZ', null, Math.max(0, y), null),
    outline: (title, level, y) => {
      const depth = Math.min(Math.max(1, level), outlineStack.length)
      outlineStack.length = depth
      const parent = outlineStack[depth - 1] ?? inside.outline
      const item = parent.addItem(title, {
        fit: false,
        left: inside.page.width,
        top: Math.max(0, y),
        zoom: 0,
        expanded: false,
      })
      outlineStack[depth] = item
    },
    image: (bytes, { x, y, width, height }) => {
      const copy = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer
      inside.image(copy, x, y, { width, height })
    },
    pageLabels: (ranges) => {
      const numbers = ranges.flatMap(({ from, style, start }) => [
        from,
        { S: style === 'roman' ? 'r' : 'D', St: start },
      ])
      const labels = inside.ref({ Nums: numbers })
      inside._root.data.PageLabels = labels
      labels.end()
    },
    finish: async () => {
      for (const root of roots) root.end()
      countClosed(inside.outline)
      const preferences = inside._root.data.ViewerPreferences as { data?: Record<string, unknown> } | undefined
      if (preferences?.data !== undefined) preferences.data.PrintScaling = 'None'
      doc.end()
      await ended
      return joined(chunks)
    },
  }
}

function hex(code: number): string {
  return code.toString(16).padStart(4, '0')
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
  let at = 0
  for (const chunk of chunks) {
    bytes.set(chunk, at)
    at += chunk.length
  }
  return bytes
}
