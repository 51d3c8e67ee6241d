import type { ElementSettings, PdfContent, PdfElement } from './pdf-document.ts'

/** The parts of pdfkit's objects that its types leave out. Every private name stands here and in the door, and nowhere else. */
export interface Inside {
  info: Record<string, unknown>
  _addInfo: () => void
  _font: InsideFont
  _root: { data: Record<string, unknown> }
  page: { fonts: Record<string, unknown>; height: number; width: number }
  outline: InsideOutline
  ref(data: Record<string, unknown>): { end(): void }
  addContent(operators: string): void
  struct(role: string, settings: ElementSettings): PdfElement
  addStructure(element: PdfElement): void
  markStructureContent(role: string): PdfContent
  markContent(tag: string, settings: Record<string, unknown>): void
  endMarkedContent(): void
  goTo(x: number, y: number, width: number, height: number, name: string, settings: object): void
  link(x: number, y: number, width: number, height: number, url: string, settings: object): void
  addNamedDestination(name: string, kind: string, left: number | null, top: number | null, zoom: number | null): void
  image(source: ArrayBuffer, x: number, y: number, settings: object): void
}

/** A font as pdfkit embeds it. */
export interface InsideFont {
  readonly id: string
  readonly subset: { includeGlyph(glyph: number): number; glyphs: number[] }
  readonly widths: (number | undefined)[]
  readonly unicode: (readonly number[] | undefined)[]
  ref(): unknown
}

/** An entry of the outline. */
export interface InsideOutline {
  options: Record<string, unknown>
  outlineData: Record<string, unknown>
  children: InsideOutline[]
  addItem(title: string, settings: Record<string, unknown>): InsideOutline
}

/** Quirk 3: XML needs its five signs escaped; the plain information dictionary does not. */
export function escapeMetadata(inside: Inside): void {
  const original = inside._addInfo
  inside._addInfo = function escaped(this: Inside): void {
    const kept = this.info
    this.info = Object.fromEntries(
      Object.entries(kept).map(([key, value]) => [key, typeof value === 'string' ? escapeXml(value) : value]),
    )
    original.call(this)
    this.info = kept
  }
}

function escapeXml(text: string): string {
  const signs: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
  return text.replace(/[&<>"]/g, (sign) => signs[sign] ?? sign)
}

/** Quirk 6: a closed entry says how many it would show, as a negative number. */
export function countClosed(item: InsideOutline): void {
  for (const child of item.children) {
    if (child.children.length > 0) child.outlineData.Count = -child.children.length
    countClosed(child)
  }
}
